using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A nurse's day as driven: from home along her visits and home again.</summary>
/// <param name="Stops">The visits in order, each with the minutes of driving before it.</param>
/// <param name="DrivingMinutes">All driving, first and last leg included.</param>
public sealed record DayRoute(ImmutableArray<(WeekVisit Visit, int TravelBefore)> Stops, int DrivingMinutes)
{
    /// <param name="week">The week.</param>
    /// <param name="nurse">Whose day.</param>
    /// <param name="day">The day.</param>
    /// <param name="roads">The roads.</param>
    /// <param name="standing">The week with closures that hold; left out, the roads are as usual.</param>
    public static DayRoute Of(PlannedWeek week, string nurse, LocalDate day, RoadTravel roads, StandingWeek? standing = null)
    {
        var stops = ImmutableArray.CreateBuilder<(WeekVisit, int)>();
        int home = roads.PlaceOfNurse(nurse);
        int here = home;
        int driving = 0;
        int? leave = null;
        foreach (WeekVisit visit in week.Visits.Where(v => v.Day == day && (v.Nurse == nurse || v.Second == nurse)).OrderBy(v => v.Start))
        {
            int there = roads.PlaceOfPatient(visit.Patient.Value);
            int travel = Trip(here, there, leave ?? Minute(visit) - roads.Times.Minutes(here, there));
            stops.Add((visit, travel));
            driving += travel;
            here = there;
            leave = Minute(visit) + visit.Minutes + (standing?.Problem.Rules.DocumentationMinutes ?? 0);
        }

        if (stops.Count > 0) driving += Trip(here, home, leave ?? 0);
        return new DayRoute(stops.ToImmutable(), driving);

        int Minute(WeekVisit visit) => standing?.Calendar.Minute(visit.Day, visit.Start) ?? 0;
        int Trip(int from, int to, int leaving) => standing?.Problem.TripMinutes(from, to, leaving) ?? roads.Times.Minutes(from, to);
    }
}
