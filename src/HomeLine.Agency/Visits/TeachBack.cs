using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Visits;

/// <summary>How far somebody came with a task.</summary>
public enum TeachLevel
{
    /// <summary>It was shown.</summary>
    Shown,

    /// <summary>Did it back with prompts.</summary>
    WithPrompts,

    /// <summary>Did it back alone and told why.</summary>
    Independent,

    /// <summary>Not yet.</summary>
    NotYet,
}

/// <summary>One task taught back.</summary>
/// <param name="Person">Who learned, for example <c>spouse</c>.</param>
/// <param name="Item">The task.</param>
/// <param name="Line">On which line; empty for every line.</param>
/// <param name="Level">How far it came.</param>
/// <param name="Validate">The nurse validates the person for the task; only where it was done alone.</param>
public sealed record TeachBack(string Person, CareItem Item, LineId? Line, TeachLevel Level, bool Validate);
