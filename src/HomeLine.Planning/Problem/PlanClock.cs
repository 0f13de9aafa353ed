using System.Globalization;
using NodaTime;

namespace HomeLine.Planning.Problem;

/// <summary>Plan minutes as people say them.</summary>
public static class PlanClock
{
    /// <summary>Day and time, for example <c>Tue 13:32</c>.</summary>
    /// <param name="firstDay">Day 0 of the problem.</param>
    /// <param name="minute">Plan minute; may be before day 0.</param>
    public static string Say(LocalDate firstDay, long minute) => $"{DayName(firstDay, Day(minute))} {Time(minute)}";

    /// <summary>Short English day name of a day index, for example <c>Wed</c>.</summary>
    /// <param name="firstDay">Day 0 of the problem.</param>
    /// <param name="day">Day index.</param>
    public static string DayName(LocalDate firstDay, int day) =>
        firstDay.DayOfWeek == IsoDayOfWeek.None
            ? "day"
            : ((IsoDayOfWeek)(((((int)firstDay.DayOfWeek - 1 + day) % 7) + 7) % 7 + 1)).ToString()[..3];

    /// <summary>Time of day, for example <c>07:52</c>.</summary>
    /// <param name="minute">Plan minute.</param>
    public static string Time(long minute)
    {
        long inDay = ((minute % 1440) + 1440) % 1440;
        return string.Create(CultureInfo.InvariantCulture, $"{inDay / 60:00}:{inDay % 60:00}");
    }

    private static int Day(long minute) => (int)Math.Floor(minute / 1440.0);
}
