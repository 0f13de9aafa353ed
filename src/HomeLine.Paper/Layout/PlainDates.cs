using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Paper.Layout;

/// <summary>Days and times as people say them: a weekday with every date, and am or pm with every time.</summary>
public static class PlainDates
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-US");
    private static readonly LocalDatePattern DayPattern = LocalDatePattern.Create("dddd, MMMM d, uuuu", English);
    private static readonly LocalTimePattern TimePattern = LocalTimePattern.Create("h:mm tt", CultureInfo.InvariantCulture);

    /// <summary>For example <c>Tuesday, March 9, 2027</c>.</summary>
    public static string Day(LocalDate date) => DayPattern.Format(date);

    /// <summary>For example <c>8:05 am</c>.</summary>
    public static string Time(LocalTime time) => TimePattern.Format(time).Replace("AM", "am", StringComparison.Ordinal)
        .Replace("PM", "pm", StringComparison.Ordinal);

    /// <summary>For example <c>Tuesday, March 9, 2027, 8:05 am</c>.</summary>
    public static string Moment(LocalDateTime moment) => $"{Day(moment.Date)}, {Time(moment.TimeOfDay)}";

    /// <summary>For example <c>1:30 to 2:30 pm</c>; both halves named when they differ.</summary>
    public static string Range(LocalTime from, LocalTime to)
    {
        var sameHalf = from.Hour < 12 == to.Hour < 12;
        return $"{(sameHalf ? Time(from)[..^3] : Time(from))} to {Time(to)}";
    }
}
