using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Visits;

/// <summary>
/// Records a visit: looked at as often as one likes, signed once. Everything becomes entries of the ledger that the clocks read; the record itself is
/// written once and only ever amended. A red flag locks the line and calls; it never books.
/// </summary>
public sealed class RecordVisit(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>What stands against signing and what signing would do. Stores nothing. Needs <see cref="AgencyAction.RecordVisit"/>.</summary>
    /// <param name="actor">Who would sign.</param>
    /// <param name="entry">The visit as written down.</param>
    /// <param name="amends">The record that is amended; empty for a first one.</param>
    /// <param name="cancel">Cancels the work.</param>
    public async Task<Outcome<VisitCheck>> CheckAsync(Actor actor, VisitEntry entry, string? amends, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.RecordVisit) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        Outcome<VisitSetting> setting = await SettingAsync(db, read.Value, actor, entry, amends, cancel);
        return setting.Succeeded ? VisitChecking.Of(entry, setting.Value, "new") : setting.Refusal!;
    }

    /// <summary>
    /// Signs and locks. Needs <see cref="AgencyAction.RecordVisit"/>. Refused while something has to be corrected or answered; nothing is stored then.
    /// The same submission sent again answers with the record it made.
    /// </summary>
    public Task<Outcome<VisitRecord>> SignAsync(Actor actor, VisitEntry entry, CancellationToken cancel) => SignAsync(actor, entry, null, cancel);

    /// <summary>Amends a signed record: by who signed it or a clinical manager, with the reason. The original stays readable.</summary>
    public Task<Outcome<VisitRecord>> AmendAsync(Actor actor, string record, VisitEntry entry, CancellationToken cancel) => SignAsync(actor, entry, record, cancel);

    private Task<Outcome<VisitRecord>> SignAsync(Actor actor, VisitEntry entry, string? amends, CancellationToken cancel) =>
        AgencyWork.DoAsync<VisitRecord>(databases, clock, actor, AgencyAction.RecordVisit, async (db, agency) =>
        {
            if (entry.Submission is not { Length: > 0 and <= 80 })
                return new Refusal("submission-missing", "The form carries no number of its own.", "Open the visit again and copy what you wrote.");
            if (await db.VisitRecords.AsNoTracking().SingleOrDefaultAsync(r => r.Submission == entry.Submission, cancel) is { } same)
                return same.SignedBy == actor.UserId ? same : new Refusal("submission-taken", "This form was signed by somebody else.", "Open the visit again.");
            Outcome<VisitSetting> setting = await SettingAsync(db, agency, actor, entry, amends, cancel);
            if (!setting.Succeeded) return setting.Refusal!;
            string id = $"V{await db.VisitRecords.CountAsync(cancel) + 1}";
            VisitCheck check = VisitChecking.Of(entry, setting.Value, id);
            if (check.Faults is [var fault, ..]) return new Refusal("visit-incomplete", fault.Sentence, "Correct what is marked; what was typed is kept.");
            if (check.Open(entry) is [var question, ..]) return new Refusal("visit-unanswered", question.Sentence, "Answer in a few words, then sign.");
            return await new VisitDesk(db, actor, setting.Value, entry, check, id, clock.RealNow()).KeepAsync(cancel);
        }, cancel);

    private async Task<Outcome<VisitSetting>> SettingAsync(AgencyDb db, AgencyAtHand agency, Actor actor, VisitEntry entry, string? amends, CancellationToken cancel)
    {
        Patient? patient = agency.Roster.Patients.FirstOrDefault(p => p.Id == entry.Patient);
        if (patient is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        ImmutableArray<VisitRecord> records = await VisitStore.OfPatientAsync(db, entry.Patient, cancel);
        VisitRecord? amended = amends is null ? null : records.FirstOrDefault(r => r.Id == amends);
        if (Amending(actor, entry, amends, amended, records) is { } refused) return refused;
        NurseFile? nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == actor.NurseId);
        return new VisitSetting(agency, patient, nurse, nurse?.Name ?? actor.Name, VisitStore.Standing(records).Remove(amended!), amended, clock.RealNow());
    }

    private static Refusal? Amending(Actor actor, VisitEntry entry, string? amends, VisitRecord? amended, ImmutableArray<VisitRecord> records)
    {
        if (amends is null) return null;
        if (amended is null) return new Refusal("record-unknown", "There is no such record of this patient.", "Look at the patient's visits again.");
        if (records.Any(r => r.Amends == amends)) return new Refusal("record-amended", "This record was amended already.", "Open the record that took its place.");
        if (amended.SignedBy != actor.UserId && !actor.Roles.Contains(AgencyRole.ClinicalManager))
            return new Refusal("record-not-yours", $"{amended.SignedName} signed this record.", "Ask who signed it, or a clinical manager.");
        return string.IsNullOrWhiteSpace(entry.AmendedBecause)
            ? new Refusal("amendment-reason-missing", "It is not said why the record is amended.", "Say in a few words what was wrong.")
            : null;
    }
}
