using System.Globalization;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Days, times and spans as they are said in answers, the same whatever the machine's language.</summary>
internal static class DayWords
{
    public static string Day(LocalDate date) => date.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    public static string Time(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    public static string Moment(LocalDateTime at) => $"{Day(at.Date)} {Time(at.TimeOfDay)}";

    public static string When(WeekVisit visit) => $"{Day(visit.Day)} {Time(visit.Start)}";

    /// <summary>The arrival range of a visit as a family is told it.</summary>
    public static string Range(WeekVisit visit, int minutes)
    {
        LocalTime from = visit.ToldFrom ?? visit.Start;
        return $"{Day(visit.Day)} between {Time(from)} and {Time(from.PlusMinutes(minutes))}";
    }

    public static string Count(int count, string one, string many) => count == 1 ? $"1 {one}" : string.Create(CultureInfo.InvariantCulture, $"{count} {many}");
}
