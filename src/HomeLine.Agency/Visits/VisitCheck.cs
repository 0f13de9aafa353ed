using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Visits;

/// <summary>What stands against signing a visit, and what signing it would do. Nothing is stored by asking.</summary>
public sealed record VisitCheck
{
    /// <summary>What has to be corrected first, each at its field.</summary>
    public ImmutableArray<VisitFault> Faults { get; init; } = [];

    /// <summary>Questions to be answered first.</summary>
    public ImmutableArray<VisitQuestion> Questions { get; init; } = [];

    /// <summary>What follows, said before it is done.</summary>
    public ImmutableArray<string> Told { get; init; } = [];

    /// <summary>What is other than last time, in words.</summary>
    public ImmutableArray<string> Changed { get; init; } = [];

    /// <summary>A red flag: whom to call now. Nothing is booked by it.</summary>
    public VisitStop? Stop { get; init; }

    /// <summary>Windows that would move, appear or end.</summary>
    public ImmutableArray<MovedCare> Moved { get; init; } = [];

    /// <summary>What a reader of the record must know.</summary>
    public ImmutableArray<string> Flags { get; init; } = [];
    public bool NeedsCoSign { get; init; }

    /// <summary>The entries the ledger would get.</summary>
    internal ImmutableArray<LineEvent> Events { get; init; } = [];

    /// <summary>Questions that are not answered yet.</summary>
    public ImmutableArray<VisitQuestion> Open(VisitEntry entry) =>
        [.. Questions.Where(q => !entry.Answers.TryGetValue(q.Key, out string? answer) || string.IsNullOrWhiteSpace(answer))];
}

/// <summary>Something that has to be corrected.</summary>
/// <param name="Field">Which field: <c>arrived</c>, <c>signs</c>, <c>item KEY</c>, <c>line ID</c>, <c>draw ORDER</c> …</param>
/// <param name="Code">A code of docs/reasons.md.</param>
/// <param name="Sentence">What is wrong and what would make it right.</param>
public sealed record VisitFault(string Field, string Code, string Sentence);

/// <summary>Something that has to be answered; the answer is kept with the record and in the ledger.</summary>
/// <param name="Key">Names the question within its visit.</param>
/// <param name="Code">A code of docs/reasons.md.</param>
/// <param name="Sentence">The question.</param>
public sealed record VisitQuestion(string Key, string Code, string Sentence);

/// <summary>A red flag found at the visit. There is deliberately no time in it.</summary>
/// <param name="IsEmergency">The emergency number first.</param>
/// <param name="Found">What was found.</param>
/// <param name="Wording">What to do, in order.</param>
/// <param name="Call">The number to call first.</param>
public sealed record VisitStop(bool IsEmergency, ImmutableArray<string> Found, ImmutableArray<string> Wording, string Call);

/// <summary>One clock that moves, in words.</summary>
/// <param name="What">Item and line.</param>
/// <param name="Before">The window as it stood; empty when there was none.</param>
/// <param name="After">The window as it stands; empty when it ended.</param>
/// <param name="Item">The item.</param>
/// <param name="Line">On which line.</param>
/// <param name="Order">Under which order.</param>
public sealed record MovedCare(string What, string Before, string After, CareItem Item, LineId? Line, string? Order);
