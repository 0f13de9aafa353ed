using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Kits;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Sheets;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>A nurse's day from the published week. She sees her own; who plans may look at anybody's.</summary>
public sealed class AskMyDay(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeeMyDay"/>; another nurse's day needs <see cref="AgencyAction.PlanWeek"/> as well.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="nurse">Whose day; empty for one's own.</param>
    /// <param name="day">Which day at the branch; empty for today.</param>
    /// <param name="cancel">Cancels the work.</param>
    public async Task<Outcome<MyDay>> AskAsync(Actor actor, string? nurse, LocalDate? day, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeMyDay) is { } refusal) return refusal;
        string? whose = string.IsNullOrWhiteSpace(nurse) ? actor.NurseId : nurse;
        if (whose != actor.NurseId && actor.Refuse(AgencyAction.PlanWeek) is { } others) return others;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        if (agency.Roster.Nurses.FirstOrDefault(n => n.Id == whose) is not { } file)
            return new Refusal("nurse-unknown", "This account belongs to no nurse.", "Choose a nurse, or ask an administrator to enter your number.");
        LocalDate on = day ?? agency.Today;
        StoredWeek? week = await WeekStore.PublishedAsync(db, AgencyAtHand.WeekOf(on), cancel);
        string[] visits = [.. (week?.Week.Visits ?? []).Where(v => v.Day == on && (v.Nurse == whose || v.Second == whose)).Select(v => v.Id)];
        var records = await db.VisitRecords.AsNoTracking()
            .Where(r => visits.Contains(r.Visit) && !db.VisitRecords.Any(a => a.Amends == r.Id))
            .Select(r => new { r.Visit, r.Id }).ToListAsync(cancel);
        List<CheckIn> signs = await db.CheckIns.AsNoTracking().Where(c => c.Day == on).ToListAsync(cancel);
        return Of(file, on, agency, week?.Week, records.ToLookup(r => r.Visit!, r => r.Id), signs);
    }

    /// <summary>The nurses whose day may be looked at, in roster order.</summary>
    public async Task<Outcome<ImmutableArray<(string Id, string Name)>>> NursesAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeMyDay) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        return read.Value.Roster.Nurses.Where(n => n.Id == actor.NurseId || actor.Allows(AgencyAction.PlanWeek)).Select(n => (n.Id, n.Name)).ToImmutableArray();
    }

    private static MyDay Of(NurseFile nurse, LocalDate day, AgencyAtHand agency, PlannedWeek? week, ILookup<string, string> recorded, IReadOnlyCollection<CheckIn> signs)
    {
        PlannedWeek planned = week ?? new PlannedWeek { FirstDay = AgencyAtHand.WeekOf(day), Visits = [] };
        DaySheetContent sheet = DaySheetWriter.Of(nurse, day, agency, planned);
        ImmutableArray<WeekVisit> visits = [.. planned.Visits.Where(v => v.Day == day && (v.Nurse == nurse.Id || v.Second == nurse.Id)).OrderBy(v => v.Start)];
        ImmutableArray<MyStop> stops = [.. visits.Zip(sheet.Stops, (visit, stop) => Stop(visit, stop, nurse, agency, [.. recorded[visit.Id]], signs))];
        return new MyDay
        {
            Nurse = nurse.Id,
            NurseName = nurse.Name,
            Day = day,
            Now = sheet.PrintedAt,
            PlanVersion = planned.Version,
            Stops = [.. stops.OrderBy(s => !s.Recorded.IsEmpty).ThenBy(s => s.Visit.Start)],
            DrivingMinutes = sheet.DrivingMinutes,
            CoordinatorPhone = sheet.CoordinatorPhone,
            OnCallPhone = sheet.OnCallPhone,
            EmergencyNumber = sheet.EmergencyNumber,
        };
    }

    private static MyStop Stop(WeekVisit visit, DayStop sheet, NurseFile nurse, AgencyAtHand agency, ImmutableArray<string> recorded, IEnumerable<CheckIn> signs)
    {
        CheckIn[] given = [.. signs.Where(s => s.Visit == visit.Id).OrderBy(s => s.At)];
        LocalTime? At(bool isOut) => given.FirstOrDefault(s => s.IsOut == isOut)?.At.InZone(agency.Roster.Profile.Zone).TimeOfDay;
        return new MyStop(visit, sheet, KitList.Of(visit, agency.Files[visit.Patient], agency.Files.Policy), visit.Second == nurse.Id, recorded)
        {
            AsksForSigns = agency.Roster.Patients.Any(p => p.Id == visit.Patient && SafetyTimer.Asks(p)),
            IsForTwo = agency.Roster.Patients.Any(p => p.Id == visit.Patient && p.CrewSize > 1),
            ArrivedAt = At(isOut: false),
            OutAt = At(isOut: true),
        };
    }
}
