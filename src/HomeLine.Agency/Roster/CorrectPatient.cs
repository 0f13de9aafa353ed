using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.PolicyLibrary;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Roster;

/// <summary>Dates of a patient as corrected.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="BornOn">Birth date; empty while unknown, then the rules of age stay off and are asked about.</param>
/// <param name="CareStartedOn">Start of care, day 1 of the plan of care.</param>
/// <param name="Reason">Where the right date comes from.</param>
public sealed record PatientCorrection(PatientId Patient, LocalDate? BornOn, LocalDate CareStartedOn, string Reason);

/// <summary>What a correction does.</summary>
/// <param name="Moved">Due windows that appear, disappear or move.</param>
/// <param name="Asked">Decisions that it raises.</param>
/// <param name="Settled">Decisions that it settles.</param>
public sealed record CorrectionEffects(ImmutableArray<MovedDue> Moved, ImmutableArray<string> Asked, ImmutableArray<string> Settled);

/// <summary>
/// Corrects a birth date or the start of care. Everything that counts from them (recertification windows, rules of age) is computed anew, and what moves
/// is listed before and after.
/// </summary>
public sealed class CorrectPatient(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Nobody older has been recorded anywhere; a date before is a slip of the hand.</summary>
    private const int OldestYears = 125;

    /// <summary>What the correction would do. Needs <see cref="AgencyAction.CorrectPatient"/>. Nothing is stored.</summary>
    public Task<Outcome<CorrectionEffects>> PreviewAsync(Actor actor, PatientCorrection correction, CancellationToken cancel) =>
        AgencyWork.DoAsync<CorrectionEffects>(databases, clock, actor, AgencyAction.CorrectPatient, (_, agency) =>
            Task.FromResult(Fault(agency, correction) is { } fault ? (Outcome<CorrectionEffects>)fault : Effects(agency, correction)), cancel);

    /// <summary>Stores it. Needs <see cref="AgencyAction.CorrectPatient"/> and a reason. A later import does not take it back.</summary>
    public Task<Outcome<CorrectionEffects>> KeepAsync(Actor actor, PatientCorrection correction, CancellationToken cancel) => AgencyWork.DoAsync<CorrectionEffects>(databases, clock, actor, AgencyAction.CorrectPatient, async (db, agency) =>
    {
        if (Fault(agency, correction) is { } fault) return fault;
        if (string.IsNullOrWhiteSpace(correction.Reason))
            return new Refusal("correction-reason-missing", "It is not said where the date comes from.", "Say it in a few words, for example: asked the family.");
        CorrectionEffects effects = Effects(agency, correction);
        Patient stored = await db.Patients.SingleAsync(p => p.Id == correction.Patient, cancel);
        string before = InWords(stored.BornOn, stored.CareStartedOn);
        db.Entry(stored).Property(p => p.BornOn).CurrentValue = correction.BornOn;
        db.Entry(stored).Property(p => p.CareStartedOn).CurrentValue = correction.CareStartedOn;
        await AuditTrail.AppendAsync(db, actor, "correct-patient", correction.Patient.Value,
            $"{before} to {InWords(correction.BornOn, correction.CareStartedOn)}: {correction.Reason.Trim()}", clock.RealNow(), cancel);
        return effects;
    }, cancel);

    private static Refusal? Fault(AgencyAtHand agency, PatientCorrection correction)
    {
        if (agency.Roster.Patients.All(p => p.Id != correction.Patient))
            return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        if (correction.CareStartedOn > agency.Today)
            return new Refusal("care-start-in-future", "Care would start in the future.", "Correct the start of care.");
        if (correction.BornOn > agency.Today || correction.BornOn < agency.Today.PlusYears(-OldestYears))
            return new Refusal("birth-date-out-of-range", "The birth date is in the future or too long ago.", "Correct the birth date.");
        return correction.BornOn > correction.CareStartedOn
            ? new Refusal("care-before-birth", "Care would have started before the birth.", "Correct one of the two dates.")
            : null;
    }

    private static CorrectionEffects Effects(AgencyAtHand agency, PatientCorrection correction)
    {
        PatientCare care = agency.Files[correction.Patient];
        CareAnswer before = WhatIsDue.For(care, agency.Files.Policy, agency.Now);
        CareAnswer after = WhatIsDue.For(
            care with { BornOn = correction.BornOn, CareStartedOn = correction.CareStartedOn }, agency.Files.Policy, agency.Now);
        string[] asked = [.. before.Decisions.Select(d => d.Sentence)], then = [.. after.Decisions.Select(d => d.Sentence)];
        Patient patient = agency.Roster.Patients.First(p => p.Id == correction.Patient);
        return new CorrectionEffects([.. WhatWouldMove.Between(before, after).Select(moved => PolicyPreview.Row(patient, care, moved))], [.. then.Except(asked)], [.. asked.Except(then)]);
    }

    private static string InWords(LocalDate? born, LocalDate started) =>
        $"born {(born is { } day ? LocalDatePattern.Iso.Format(day) : "unknown")}, care started {LocalDatePattern.Iso.Format(started)}";
}
