namespace HomeLine.LineCare.RedFlags;

/// <summary>How urgent an answered question is.</summary>
public enum ScreenClass
{
    /// <summary>Call the emergency number now. Nothing is scheduled.</summary>
    Emergency,

    /// <summary>A licensed person must call within minutes. Nothing is scheduled before they decide.</summary>
    UrgentClinician,

    /// <summary>Needs care the same day; answers may be searched.</summary>
    SameDay,

    /// <summary>Normal flow.</summary>
    Routine,
}

/// <summary>What the caller said.</summary>
public enum ScreenAnswer
{
    /// <summary>Not asked yet.</summary>
    NotAsked,

    /// <summary>No.</summary>
    No,

    /// <summary>Yes.</summary>
    Yes,

    /// <summary>Does not know: counts as yes for the emergency and urgent questions.</summary>
    DoNotKnow,
}

/// <summary>One question of the symptom screen, asked in order.</summary>
/// <param name="Id">Stable id, for example <c>breathing</c>.</param>
/// <param name="Class">What a yes means.</param>
/// <param name="Text">The question in plain words, to be read aloud.</param>
public sealed record ScreenQuestion(string Id, ScreenClass Class, string Text);
