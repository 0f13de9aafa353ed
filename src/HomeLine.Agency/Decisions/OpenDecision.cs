using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>A question that waits for a licensed person.</summary>
/// <param name="Key">Code, patient, line and subject: the same question has the same key from day to day, so that it stands on the list once.</param>
/// <param name="Patient">Whose.</param>
/// <param name="Line">On which line.</param>
/// <param name="Code">What kind of question; explained in docs/reasons.md.</param>
/// <param name="Sentence">What has to be decided and why.</param>
/// <param name="About">The subject by identifier: an order, a ledger entry, a visit.</param>
/// <param name="Since">Since which day it waits; empty when nothing says.</param>
/// <param name="Round">How often it was decided before; given back with the decision, so that nobody decides twice.</param>
public sealed record OpenDecision(
    string Key, PatientId Patient, LineId? Line, string Code, string Sentence, string About, LocalDate? Since, int Round = 0)
{
    /// <summary>The line or lumen is locked while it waits.</summary>
    public bool IsLocked { get; init; }

    public DecisionRight Right => DecisionRights.Of(Code);

    /// <summary>What may be decided as things stand: only a lock can be kept, and what is locked is not accepted as it is.</summary>
    public ImmutableArray<DecisionChoice> Choices =>
        [.. Right.Choices.Where(c => IsLocked ? c is not (DecisionChoice.AcceptUntil or DecisionChoice.LockLine) : c != DecisionChoice.KeepLocked)];

    public static OpenDecision Of(PatientId patient, LineId? line, string code, string sentence, string about, LocalDate? since) =>
        new(string.Join('|', code, patient.Value, line?.Value ?? "", about), patient, line, code, sentence, about, since);
}
