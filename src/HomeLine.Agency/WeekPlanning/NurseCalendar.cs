using HomeLine.Agency.Roster;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Nurse files as the planner's nurses: shifts of the horizon, leave taken out, licences by day.</summary>
public static class NurseCalendar
{
    private static readonly LocalTime LunchFrom = new(11, 0);
    private static readonly LocalTime LunchTo = new(14, 0);

    public static Nurse Of(NurseFile file, RoadTravel roads, PlanCalendar calendar) => new()
    {
        Id = file.Id,
        Name = file.Name,
        Home = roads.PlaceOfNurse(file.Id),
        Shifts = [.. Enumerable.Range(0, calendar.DayCount).Select(day => ShiftOn(file, day, calendar)).OfType<Shift>()],
        Skills = file.Skills,
        Licences = [.. file.Licences.Select(l => new Licence(l.State, l.ValidThrough is { } last ? calendar.Day(last) : int.MaxValue))],
        Traits = file.Traits,
        MaxVisitsADay = file.MaxVisitsADay,
    };

    /// <summary>Why a nurse does not work on a day, in words; empty when she does.</summary>
    public static string AbsenceOn(NurseFile file, LocalDate date)
    {
        if (file.Leaves.FirstOrDefault(l => date >= l.From && date <= l.Through) is { } leave) return leave.Reason;
        return file.Week.Any(w => w.Weekday == date.DayOfWeek && !w.OnCall) ? "" : "off";
    }

    private static Shift? ShiftOn(NurseFile file, int day, PlanCalendar calendar)
    {
        LocalDate date = calendar.Date(day);
        if (file.Leaves.Any(l => date >= l.From && date <= l.Through)) return null;
        WorkingTime? hours = file.Week.FirstOrDefault(w => w.Weekday == date.DayOfWeek && !w.OnCall)
            ?? file.Week.FirstOrDefault(w => w.Weekday == date.DayOfWeek);
        if (hours is null) return null;
        int from = calendar.Minute(date, hours.From);
        int to = calendar.Minute(date, hours.To) + (hours.To <= hours.From ? PlanCalendar.MinutesADay : 0);
        return new Shift(
            day,
            from,
            to,
            to + file.OvertimeMinutes,
            file.LunchMinutes,
            Math.Clamp(calendar.Minute(date, LunchFrom), from, to),
            Math.Clamp(calendar.Minute(date, LunchTo), from, to),
            hours.OnCall);
    }
}
