using System.Collections.Immutable;
using HomeLine.Agency.Absence;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>One trouble's work inside its transaction: the facts, the stop, the offer as it is kept.</summary>
internal sealed class TroubleDesk(AgencyDb db, Actor actor, AgencyAtHand agency, Instant realNow)
{
    public static async Task<string> NextIdAsync(AgencyDb db, CancellationToken cancel) => $"T{await db.Troubles.CountAsync(cancel) + 1}";

    /// <summary>The week an entry is about.</summary>
    public static LocalDate WeekOf(TroubleEntry entry, LocalDate today) => AgencyAtHand.WeekOf(entry switch
    {
        NurseIsOut nurse => nurse.From.Date,
        RoadShut road => road.From.Date,
        RoadOpenAgain { Moved: [var moved, ..] } => (moved.Before ?? moved.After)!.Day,
        _ => today,
    });

    public async Task<Outcome<TroubleResult>> KeepAsync(TroubleEntry entry, PreparedTrouble prepared, PlannedWeek? week, string id, CancellationToken cancel)
    {
        LocalDate firstDay = week?.FirstDay ?? agency.ThisWeek;
        if (prepared.Stop is { } screen)
        {
            string reportId = $"R{await db.Reports.CountAsync(cancel) + 1}";
            Outcome<ReportResult> stop = await new ReportDesk(db, actor, agency, prepared.Report!, reportId, realNow).StopAsync(screen, week, cancel);
            if (!stop.Succeeded) return stop.Refusal!;
            FiledTrouble stopped = Filed(entry, prepared, id, firstDay, week?.Version ?? 0) with { State = TroubleState.Stopped, StoppedAs = reportId, Offer = null };
            await AddAsync(stopped, "stopped", cancel);
            return new TroubleResult(stopped, stop.Value);
        }

        int version = week?.Version ?? 0;
        db.LineEvents.AddRange(prepared.Entries.Select(e => e with { RecordedAt = realNow, RecordedBy = actor.Name }));
        db.OrderRequests.AddRange(prepared.Requests.Select(r => r with { AskedBy = actor.Name }));
        if (prepared.Absence is { } absence) await KeepLeaveAsync(absence.Nurse, absence.Leave, cancel);
        if (prepared.Held is { } held)
        {
            Outcome<PlannedWeek> published = await WeekStore.PublishAsync(db, actor, held, $"{id}: {prepared.Title}", realNow, cancel);
            if (!published.Succeeded) return published.Refusal!;
            version = published.Value.Version;
        }

        FiledTrouble filed = Filed(entry, prepared, id, firstDay, version);
        if (prepared.IsOver) filed = filed with { State = TroubleState.Closed, Reason = "Nothing more to do.", EndedAt = agency.Now };
        await AddAsync(filed, $"{filed.Offer?.Answers.Length ?? 0} answers", cancel);
        AddToTell(id, firstDay, [.. OnTheRoad.Held(filed.Offer?.ToTell ?? [], week, agency)], 0);
        return new TroubleResult(filed, null);
    }

    /// <summary>A patient went to hospital: the hold and the visits taken out are facts, the freed time an offer.</summary>
    public async Task<Outcome<TroubleResult>> HospitalAsync(InHospital entry, string id, CancellationToken cancel)
    {
        Outcome<KeptHold> kept = await new HoldDesk(db, actor, agency, realNow).HoldAsync(new HoldEntry(entry.Patient, true, entry.From, null, entry.Where), tellUnder: null, cancel);
        if (!kept.Succeeded) return kept.Refusal!;
        PlannedWeek? week = (await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week;
        var prepared = new PreparedTrouble
        {
            Title = $"{agency.Roster.Patients.First(p => p.Id == entry.Patient).Name} is in hospital",
            Patient = entry.Patient,
            Offer = week is null ? new MendOffer() : HospitalCase.Offer(entry, kept.Value.Lifted, new MendSetting(agency, week)),
        };
        return await KeepAsync(entry, prepared with { IsOver = prepared.Offer.Answers.IsEmpty }, week, id, cancel);
    }

    public void AddToTell(string id, LocalDate week, ImmutableArray<PersonToTell> people, int already)
    {
        for (int i = 0; i < people.Length; i++)
            db.ToTell.Add(new ToTell { Id = $"{id}-{already + i + 1}", Week = week, Person = people[i] });
    }

    private FiledTrouble Filed(TroubleEntry entry, PreparedTrouble prepared, string id, LocalDate week, int version) => new()
    {
        Id = id,
        Title = prepared.Title,
        Entry = entry,
        Patient = prepared.Patient,
        FiledAt = agency.Now,
        FiledBy = actor.Name,
        Week = week,
        WeekVersion = version,
        Offer = prepared.Offer,
    };

    private async Task AddAsync(FiledTrouble filed, string detail, CancellationToken cancel)
    {
        db.Troubles.Add(filed);
        await AuditTrail.AppendAsync(db, actor, "report-trouble", $"trouble {filed.Id}", $"{filed.Entry.GetType().Name}: {detail}", realNow, cancel);
    }

    private async Task KeepLeaveAsync(string nurse, Leave leave, CancellationToken cancel)
    {
        NurseFile file = await db.Nurses.SingleAsync(n => n.Id == nurse, cancel);
        db.Entry(file).Property(n => n.Leaves).CurrentValue = [.. file.Leaves, leave];
        await AuditTrail.AppendAsync(db, actor, "nurse-out", nurse, $"{DayWords.Day(leave.From)} to {DayWords.Day(leave.Through)}", realNow, cancel);
    }
}
