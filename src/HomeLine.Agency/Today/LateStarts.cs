using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Today;

/// <summary>A nurse who, by what she recorded, comes to her next visit after the range that was told.</summary>
/// <param name="Nurse">Her number.</param>
/// <param name="NurseName">Her name.</param>
/// <param name="PatientName">To whom she comes late.</param>
/// <param name="Told">Start of the range that was told.</param>
/// <param name="Expected">When she is expected now.</param>
/// <param name="MinutesBehind">How far behind her plan she left the visit before.</param>
public sealed record LateStart(string Nurse, string NurseName, string PatientName, LocalTime Told, LocalTime Expected, int MinutesBehind);

/// <summary>Late starts, projected from the visits recorded today and the roads as they are. Pure.</summary>
internal static class LateStarts
{
    public static ImmutableArray<LateStart> Of(AgencyAtHand agency, PlannedWeek? week, IReadOnlyCollection<VisitRecord> records)
    {
        if (week is null || records.Count == 0) return [];
        var ofVisit = records.Where(r => r.Visit is not null).GroupBy(r => r.Visit!).ToDictionary(g => g.Key, g => g.MaxBy(r => r.SignedAt)!, StringComparer.Ordinal);
        RoadTravel roads = RoadTravel.Of(agency.Roster);
        var calendar = new PlanCalendar(agency.Roster.Profile.Zone, week.FirstDay, 7);
        var trips = new TripTimes(roads.Times, StandingClosures.Changes(agency.Closures, agency.Roster, calendar), roads.SlowHoursOf(calendar));
        return [.. agency.Roster.Nurses.Select(nurse => Of(nurse, agency, week, ofVisit, roads, calendar, trips)).OfType<LateStart>()];
    }

    private static LateStart? Of(NurseFile nurse, AgencyAtHand agency, PlannedWeek week, Dictionary<string, VisitRecord> records, RoadTravel roads,
        PlanCalendar calendar, TripTimes trips)
    {
        ImmutableArray<WeekVisit> day = [.. week.Visits
            .Where(v => v.Day == agency.Today && v.Held is null && (v.Nurse == nurse.Id || v.Second == nurse.Id)).OrderBy(v => v.Start)];
        WeekVisit? last = day.LastOrDefault(v => records.ContainsKey(v.Id));
        WeekVisit? next = last is null ? null : day.FirstOrDefault(v => v.Start > last.Start && !records.ContainsKey(v.Id));
        if (last is null || next is null) return null;
        VisitRecord record = records[last.Id];
        LocalDateTime left = (record.LeftAt ?? record.ArrivedAt + Duration.FromMinutes(last.Minutes)).InZone(agency.Roster.Profile.Zone).LocalDateTime;
        int charting = (int)agency.Files.Policy.ValueOf("visit.documentation", agency.Today), range = (int)agency.Files.Policy.ValueOf("told.range", agency.Today);
        LocalDateTime free = left.PlusMinutes(charting);
        int road = trips.Leaving(roads.PlaceOfPatient(last.Patient.Value), roads.PlaceOfPatient(next.Patient.Value), calendar.Minute(free));
        // Where no road leads no time can be said; the closure itself names the visit.
        if (road >= ITravelTimes.Unreachable) return null;
        LocalDateTime there = free.PlusMinutes(road);
        LocalTime told = next.ToldFrom ?? next.Start;
        if (there <= next.Day.At(told).PlusMinutes(range)) return null;
        int behind = (int)Period.Between(last.Day.At(last.Start).PlusMinutes(last.Minutes), left, PeriodUnits.Minutes).Minutes;
        return behind <= 0
            ? null
            : new LateStart(nurse.Id, nurse.Name, agency.Roster.Patients.First(p => p.Id == next.Patient).Name, told, there.TimeOfDay, behind);
    }
}
