using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A nurse's day as driven: from home along her visits and home again.</summary>
/// <param name="Stops">The visits in order, each with the minutes of driving before it.</param>
/// <param name="DrivingMinutes">All driving, first and last leg included.</param>
public sealed record DayRoute(ImmutableArray<(WeekVisit Visit, int TravelBefore)> Stops, int DrivingMinutes)
{
    public static DayRoute Of(PlannedWeek week, string nurse, LocalDate day, RoadTravel roads)
    {
        var stops = ImmutableArray.CreateBuilder<(WeekVisit, int)>();
        int home = roads.PlaceOfNurse(nurse);
        int here = home;
        int driving = 0;
        foreach (WeekVisit visit in week.Visits.Where(v => v.Day == day && (v.Nurse == nurse || v.Second == nurse)).OrderBy(v => v.Start))
        {
            int there = roads.PlaceOfPatient(visit.Patient.Value);
            int travel = roads.Times.Minutes(here, there);
            stops.Add((visit, travel));
            driving += travel;
            here = there;
        }

        if (stops.Count > 0) driving += roads.Times.Minutes(here, home);
        return new DayRoute(stops.ToImmutable(), driving);
    }
}
