using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Whether a nurse is at the wheel by the published times: a message waits until she has arrived. Pure.</summary>
internal static class OnTheRoad
{
    /// <summary>When she should have arrived; empty when she should be in a home, not have left yet, or be at home again.</summary>
    public static Instant? Until(string nurse, PlannedWeek? week, AgencyAtHand agency)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        ImmutableArray<WeekVisit> day = [.. (week?.Visits ?? [])
            .Where(v => v.Held is null && v.Day == now.Date && (v.Nurse == nurse || v.Second == nurse)).OrderBy(v => v.Start)];
        if (day.IsEmpty) return null;
        RoadTravel roads = RoadTravel.Of(agency.Roster);
        int home = roads.PlaceOfNurse(nurse), charting = (int)agency.Files.Policy.ValueOf("visit.documentation", agency.Today);
        WeekVisit? last = day.LastOrDefault(v => v.Day.At(v.Start) <= now), next = day.FirstOrDefault(v => v.Day.At(v.Start) > now);
        LocalDateTime? leaves = last is null ? null : last.Day.At(last.Start).PlusMinutes(last.Minutes + charting);
        LocalDateTime arrives = next is not null
            ? next.Day.At(next.Start)
            : leaves!.Value.PlusMinutes(roads.Times.Minutes(Place(last!), home));
        LocalDateTime sets = leaves ?? arrives.PlusMinutes(-roads.Times.Minutes(home, Place(next!)));
        return now >= sets && now < arrives ? arrives.InZoneLeniently(agency.Roster.Profile.Zone).ToInstant() : null;

        int Place(WeekVisit visit) => roads.PlaceOfPatient(visit.Patient.Value);
    }

    /// <summary>The people to tell, with those held who are on the road; they are told as soon after arriving as anybody else is from now.</summary>
    public static IEnumerable<PersonToTell> Held(IEnumerable<PersonToTell> people, PlannedWeek? week, AgencyAtHand agency)
    {
        var within = Duration.FromMinutes((int)agency.Files.Policy.ValueOf("tell.within", agency.Today));
        return people.Select(p => p.Nurse is { } nurse && Until(nurse, week, agency) is { } until
            ? p with { NotBefore = until, By = Instant.Max(p.By, until + within) }
            : p);
    }
}
