using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>A visit before it is recorded, and after.</summary>
public sealed class AskVisit(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>The form of a published visit. Needs <see cref="AgencyAction.RecordVisit"/>; refused with <c>visit-unknown</c> when no published week holds it.</summary>
    public async Task<Outcome<VisitBrief>> PlannedAsync(Actor actor, string visit, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.RecordVisit) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        WeekVisit? planned = await FindAsync(db, visit, cancel);
        Patient? patient = read.Value.Roster.Patients.FirstOrDefault(p => p.Id == planned?.Patient);
        return planned is null || patient is null
            ? new Refusal("visit-unknown", "No published week holds this visit: it was moved or taken out.", "Open your day again, or record it as an unplanned visit.")
            : await BriefAsync(db, read.Value, actor, patient, planned, cancel);
    }

    /// <summary>The form of a visit that was not planned. Needs <see cref="AgencyAction.RecordVisit"/>.</summary>
    public async Task<Outcome<VisitBrief>> UnplannedAsync(Actor actor, PatientId id, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.RecordVisit) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        return read.Value.Roster.Patients.FirstOrDefault(p => p.Id == id) is { } patient
            ? await BriefAsync(db, read.Value, actor, patient, null, cancel)
            : new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
    }

    /// <summary>A signed visit with what it reset and what it replaces. Needs <see cref="AgencyAction.SeePatient"/>.</summary>
    public async Task<Outcome<RecordView>> RecordAsync(Actor actor, string id, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        VisitRecord? record = await db.VisitRecords.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancel);
        Patient? patient = read.Value.Roster.Patients.FirstOrDefault(p => p.Id == record?.Patient);
        if (record is null || patient is null) return new Refusal("record-unknown", "There is no such record.", "Look at the patient's visits again.");
        return await ViewAsync(db, read.Value, record, patient, cancel);
    }

    /// <summary>A signed visit written out, for the page and for paper. Needs <see cref="AgencyAction.SeePatient"/>; paper is kept in the trail.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="id">The record.</param>
    /// <param name="reader">For whom.</param>
    /// <param name="onPaper">It is printed: the trail keeps who printed it.</param>
    /// <param name="cancel">Cancels the work.</param>
    public async Task<Outcome<VisitSummaryContent>> SummaryAsync(Actor actor, string id, SummaryReader reader, bool onPaper, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        VisitRecord? record = await db.VisitRecords.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancel);
        Patient? patient = read.Value.Roster.Patients.FirstOrDefault(p => p.Id == record?.Patient);
        if (record is null || patient is null) return new Refusal("record-unknown", "There is no such record.", "Look at the patient's visits again.");
        VisitSummaryContent content = new VisitSummaryWriter(await ViewAsync(db, read.Value, record, patient, cancel), read.Value).Write(reader);
        if (!onPaper) return content;
        await using var turn = await db.BeginWorkAsync(cancel);
        await AuditTrail.AppendAsync(db, actor, "print-visit-summary", $"{record.Patient} visit {id}", reader.ToString(), clock.RealNow(), cancel);
        await turn.CommitAsync(cancel);
        return content;
    }

    /// <summary>Every record of a patient, those that were amended among them, the latest first. Needs <see cref="AgencyAction.SeePatient"/>.</summary>
    public async Task<Outcome<ImmutableArray<VisitRecord>>> OfPatientAsync(Actor actor, PatientId patient, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        ImmutableArray<VisitRecord> records = await VisitStore.OfPatientAsync(db, patient, cancel);
        return records.Reverse().ToImmutableArray();
    }

    private static async Task<VisitBrief> BriefAsync(AgencyDb db, AgencyAtHand agency, Actor actor, Patient patient, WeekVisit? planned, CancellationToken cancel)
    {
        NurseFile? nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == actor.NurseId);
        ImmutableArray<VisitRecord> records = await VisitStore.OfPatientAsync(db, patient.Id, cancel);
        return new VisitBriefWriter(patient, planned, nurse, agency).Write(VisitStore.Standing(records));
    }

    private static async Task<RecordView> ViewAsync(AgencyDb db, AgencyAtHand agency, VisitRecord record, Patient patient, CancellationToken cancel)
    {
        ImmutableArray<VisitRecord> records = await VisitStore.OfPatientAsync(db, record.Patient, cancel);
        ImmutableArray<PlannedWeek> weeks = await WeeksAsync(db, agency.ThisWeek, cancel);
        string ours = $"{record.Id}-";
        List<ToTell> told = await db.ToTell.AsNoTracking().Where(t => t.Id.StartsWith(ours) || (record.Stopped != null && t.Report == record.Stopped)).ToListAsync(cancel);
        bool stands = records.All(r => r.Amends != record.Id);
        return new RecordView
        {
            Record = record,
            Patient = patient,
            Moved = Moved(record, agency),
            Replaces = stands ? ReplacedVisits.Of(record, weeks, agency) : [],
            Notices = [.. await db.PractitionerNotices.AsNoTracking().Where(n => n.Record == record.Id).ToListAsync(cancel)],
            ToTell = [.. told.OrderBy(t => t.Id.Length).ThenBy(t => t.Id, StringComparer.Ordinal)],
            CoSignature = await db.CoSignatures.AsNoTracking().SingleOrDefaultAsync(s => s.Record == record.Id, cancel),
            AmendedBy = records.FirstOrDefault(r => r.Amends == record.Id)?.Id,
            Others = record.Visit is null ? [] : [.. VisitStore.Standing(records).Where(r => r.Visit == record.Visit && r.Id != record.Id)],
            Locks = [.. agency.Files.WhatIsDue(record.Patient, agency.Now).Locks.Select(l => $"{l.Line}: {l.Reason}")],
            OnCallPhone = agency.Roster.Profile.OnCallPhone,
            EmergencyNumber = agency.Roster.Profile.EmergencyNumber,
        };
    }

    /// <summary>What the record's own entries moved, from the ledger as it was before them.</summary>
    private static ImmutableArray<MovedCare> Moved(VisitRecord record, AgencyAtHand agency)
    {
        PatientCare care = agency.Files[record.Patient];
        var own = record.Events.ToHashSet();
        ImmutableArray<LineEvent> events = [.. care.Events.Where(e => own.Contains(e.Id))];
        PatientCare before = care with { Events = [.. care.Events.TakeWhile(e => !own.Contains(e.Id))] };
        return MovedWords.Of(WhatWouldMove.If(before, events, agency.Files.Policy, record.SignedAt), care, record.SignedAt);
    }

    internal static async Task<ImmutableArray<PlannedWeek>> WeeksAsync(AgencyDb db, LocalDate from, CancellationToken cancel)
    {
        var weeks = ImmutableArray.CreateBuilder<PlannedWeek>();
        foreach (LocalDate first in await WeekStore.PublishedWeeksAsync(db, cancel))
            if (first >= from && await WeekStore.PublishedAsync(db, first, cancel) is { } stored) weeks.Add(stored.Week);
        return weeks.ToImmutable();
    }

    /// <summary>The visit in whichever published week holds it, the latest first.</summary>
    private static async Task<WeekVisit?> FindAsync(AgencyDb db, string visit, CancellationToken cancel)
    {
        foreach (LocalDate first in (await WeekStore.PublishedWeeksAsync(db, cancel)).Reverse())
            if ((await WeekStore.PublishedAsync(db, first, cancel))?.Week.Visits.FirstOrDefault(v => v.Id == visit) is { } found) return found;
        return null;
    }
}
