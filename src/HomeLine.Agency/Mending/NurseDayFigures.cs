using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Driving and overtime of a nurse's day, by the roads as they are at each hour.</summary>
/// <param name="Driving">Minutes of driving, first and last leg included.</param>
/// <param name="Overtime">Minutes at home later than the shift ends.</param>
internal readonly record struct NurseDayFigures(int Driving, int Overtime)
{
    public static NurseDayFigures Of(PlannedWeek week, string nurse, LocalDate day, MendSetting setting)
    {
        (StandingWeek standing, RoadTravel roads) = (setting.Standing, setting.Roads);
        DayRoute route = DayRoute.Of(setting.Agency.Roster, setting.Agency.Files, week, nurse, day, standing);
        if (route.Stops.Length == 0) return default;
        WeekVisit last = route.Stops[^1].Visit;
        Shift? shift = standing.Problem.Nurses.First(n => n.Id == nurse).Shifts.FirstOrDefault(s => s.Day == standing.Calendar.Day(day) && !s.OnCall);
        HandIn? handIn = route.Stops[^1].HandIn;
        int leave = handIn is null
            ? standing.Calendar.Minute(last.Day, last.Start) + last.Minutes + standing.Problem.Rules.DocumentationMinutes
            : standing.Calendar.Minute(day, handIn.Leave);
        int home = leave + TripTimes.Of(standing.Problem).Leaving(handIn?.Place ?? roads.PlaceOfPatient(last.Patient.Value), roads.PlaceOfNurse(nurse), leave);
        return new NurseDayFigures(route.DrivingMinutes, shift is null ? 0 : Math.Max(0, home - shift.To));
    }
}
