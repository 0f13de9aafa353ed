using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>A signed visit: written once, never changed. What was wrong is amended by another one that names it.</summary>
public sealed record VisitRecord
{
    public required string Id { get; init; }

    /// <summary>Made by the device; unique, so that the same visit sent twice counts once.</summary>
    public required string Submission { get; init; }
    public required PatientId Patient { get; init; }

    /// <summary>The published visit; empty for one that was not planned.</summary>
    public string? Visit { get; init; }

    /// <summary>Day of the visit at the patient's place.</summary>
    public required LocalDate Day { get; init; }
    public required Instant ArrivedAt { get; init; }
    public Instant? LeftAt { get; init; }

    /// <summary>The nurse's number; empty for somebody without one.</summary>
    public string Nurse { get; init; } = "";

    /// <summary>Name and credential as signed.</summary>
    public required string SignedName { get; init; }
    public string Credential { get; init; } = "";

    /// <summary>The account that signed.</summary>
    public required string SignedBy { get; init; }
    public required Instant SignedAt { get; init; }

    /// <summary>Everything that was written down.</summary>
    public required VisitEntry Entry { get; init; }

    /// <summary>The ledger entries that stand for it; those of an amended record that stayed right among them.</summary>
    public ImmutableArray<EventId> Events { get; init; } = [];

    /// <summary>The questions that were asked before signing, with their answers.</summary>
    public ImmutableArray<AnsweredQuestion> Answered { get; init; } = [];

    /// <summary>What a reader must know about the record itself: late entry, recorded twice, beyond scope.</summary>
    public ImmutableArray<string> Flags { get; init; } = [];

    /// <summary>The record it amends; empty for a first one.</summary>
    public string? Amends { get; init; }

    /// <summary>A supervisor signs as well.</summary>
    public bool NeedsCoSign { get; init; }

    /// <summary>A skin injury or reaction was written down: proposed to the clinical manager.</summary>
    public bool HasSkinHarm { get; init; }

    /// <summary>The call that was filed because of a red flag; empty when there was none.</summary>
    public string? Stopped { get; init; }
}

/// <summary>A question that was asked before signing, with the answer.</summary>
public sealed record AnsweredQuestion(string Code, string Sentence, string Answer);

/// <summary>A supervisor's signature below a visit.</summary>
public sealed record CoSignature(string Record, string By, string ById, Instant At, string Note);
