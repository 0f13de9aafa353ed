using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// How often a clock comes round within the horizon, with the fewest changes, and the earliest useful start of each:
/// early enough for the next, late enough that the last one still covers the end of the horizon.
/// </summary>
public static class RepeatSteps
{
    /// <summary>Earliest starts of the occurrences, plan minutes, first to last.</summary>
    public static IEnumerable<int> Earliest(DueWindow window, int opens, int lateFrom, PlanCalendar calendar, Instant now)
    {
        if (window.Next is not { } repeat || repeat.MaxMinutes() <= 0) return [opens];
        int latest = NowOrLater(lateFrom, calendar, now);
        int count = 1;
        while (latest + (count * repeat.MaxMinutes()) <= calendar.End) count++;
        return Enumerable.Range(0, count).Select(i => Start(i, count, opens, repeat, calendar));
    }

    /// <summary>A window that is already late is met at the earliest from now on.</summary>
    public static int NowOrLater(int lateFrom, PlanCalendar calendar, Instant now)
    {
        int endOfToday = (calendar.Minute(now) / PlanCalendar.MinutesADay * PlanCalendar.MinutesADay) + PlanCalendar.MinutesADay;
        return Math.Max(lateFrom, endOfToday);
    }

    private static int Start(int index, int count, int opens, Repeat repeat, PlanCalendar calendar)
    {
        int earliest = opens + (index * repeat.MinMinutes());
        if (count == 1) return earliest;
        int toCover = calendar.End - ((count - index) * repeat.MaxMinutes());
        int floor = repeat.InDays() ? (int)Math.Floor(toCover / (double)PlanCalendar.MinutesADay) * PlanCalendar.MinutesADay : toCover;
        return Math.Max(earliest, floor);
    }
}
