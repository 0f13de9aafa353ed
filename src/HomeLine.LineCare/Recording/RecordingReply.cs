using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Recording;

/// <summary>How strongly the record objects to what is about to be saved.</summary>
public enum ReplyWeight
{
    /// <summary>It cannot be saved like this. What was typed is kept, and the sentence says what would make it right.</summary>
    Refuse,

    /// <summary>It can be saved once somebody has answered: confirmed it, or said why.</summary>
    Ask,

    /// <summary>It is saved; the sentence says what follows from it.</summary>
    Tell,
}

/// <summary>One objection, question or consequence, before something is recorded.</summary>
/// <param name="Code">A stable code, listed in docs/reasons.md.</param>
/// <param name="Weight">Whether it refuses, asks or only tells.</param>
/// <param name="Line">The line it is about; empty when it is about the patient or an order.</param>
/// <param name="Lumen">The lumen it is about; empty when it is about the whole line.</param>
/// <param name="About">The entry it is about; empty when it is about a record that is not a ledger entry.</param>
/// <param name="Sentence">One plain sentence.</param>
public sealed record RecordingReply(
    string Code, ReplyWeight Weight, LineId? Line, string? Lumen, EventId? About, string Sentence);
