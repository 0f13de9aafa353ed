using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A visit of a day as driven.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="TravelBefore">Minutes of driving before it, from the visit or drop point before.</param>
/// <param name="HandIn">Where specimens are handed in after it; empty for nowhere.</param>
/// <param name="TravelToHandIn">Minutes of driving there.</param>
public sealed record DayLeg(WeekVisit Visit, int TravelBefore, HandIn? HandIn, int TravelToHandIn);

/// <summary>A nurse's day as driven: from home along her visits, by the drop points she hands specimens in at, and home again.</summary>
/// <param name="Stops">The visits in order.</param>
/// <param name="DrivingMinutes">All driving, first and last leg included.</param>
public sealed record DayRoute(ImmutableArray<DayLeg> Stops, int DrivingMinutes)
{
    /// <param name="roster">The agency.</param>
    /// <param name="files">Policy, and whose specimens go with the courier.</param>
    /// <param name="week">The week.</param>
    /// <param name="nurse">Whose day.</param>
    /// <param name="day">Which.</param>
    /// <param name="standing">The week with closures that hold; left out, the roads are as usual at each hour.</param>
    public static DayRoute Of(AgencyRoster roster, CareFiles files, PlannedWeek week, string nurse, LocalDate day, StandingWeek? standing = null)
    {
        RoadTravel roads = RoadTravel.Of(roster);
        TripTimes trips = standing is null ? roads.On(day) : TripTimes.Of(standing.Problem);
        int midnight = standing?.Calendar.Minute(day, LocalTime.Midnight) ?? 0;
        int charting = (int)files.Policy.ValueOf("visit.documentation", day);
        var handIns = HandIns.Of(roster, files, week, nurse, day, roads).ToDictionary(h => h.After, StringComparer.Ordinal);
        var stops = ImmutableArray.CreateBuilder<DayLeg>();
        int home = roads.PlaceOfNurse(nurse), here = home, driving = 0, leave = 0;
        foreach (WeekVisit visit in week.Visits.Where(v => v.Day == day && (v.Nurse == nurse || v.Second == nurse)).OrderBy(v => v.Start))
        {
            int there = roads.PlaceOfPatient(visit.Patient.Value), start = midnight + MinuteOf(visit.Start);
            int travel = stops.Count == 0 ? trips.Reaching(here, there, start) : trips.Leaving(here, there, leave), toDrop = 0;
            (here, leave) = (there, start + visit.Minutes + charting);
            if (handIns.TryGetValue(visit.Id, out HandIn? handIn))
            {
                toDrop = trips.Leaving(here, handIn.Place, leave);
                (here, leave) = (handIn.Place, midnight + MinuteOf(handIn.Leave));
            }

            stops.Add(new DayLeg(visit, travel, handIn, toDrop));
            driving += travel + toDrop;
        }

        if (stops.Count > 0) driving += trips.Leaving(here, home, leave);
        return new DayRoute(stops.ToImmutable(), driving);
    }

    private static int MinuteOf(LocalTime time) => (time.Hour * 60) + time.Minute;
}
