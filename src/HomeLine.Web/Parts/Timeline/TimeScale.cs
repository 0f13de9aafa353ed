using NodaTime;

namespace HomeLine.Web.Parts.Timeline;

/// <summary>Whole weeks on a drawn scale: some behind today, the rest ahead. One day is ten units wide.</summary>
public sealed record TimeScale(LocalDate From, int Weeks)
{
    public const int DayWidth = 10;
    private const int WeeksBehind = 4;

    public int Days => Weeks * 7;

    public int Width => Days * DayWidth;

    public LocalDate Last => From.PlusDays(Days - 1);

    /// <summary>From the Monday four weeks before <paramref name="today"/> through the week of <paramref name="through"/>.</summary>
    public static TimeScale Around(LocalDate today, LocalDate through)
    {
        LocalDate from = MondayOf(today.PlusDays(-7 * WeeksBehind));
        return new TimeScale(from, Period.DaysBetween(from, MondayOf(through)) / 7 + 1);
    }

    public IEnumerable<LocalDate> Mondays => Enumerable.Range(0, Weeks).Select(week => From.PlusDays(7 * week));

    public bool Holds(LocalDate day) => day >= From && day <= Last;

    /// <summary>Left edge of a day; before the scale 0, after it its full width.</summary>
    public int Left(LocalDate day) => Math.Clamp(Period.DaysBetween(From, day), 0, Days) * DayWidth;

    /// <summary>Middle of a day.</summary>
    public int Middle(LocalDate day) => Left(day) + DayWidth / 2;

    private static LocalDate MondayOf(LocalDate day) => day.DayOfWeek == IsoDayOfWeek.Monday ? day : day.Previous(IsoDayOfWeek.Monday);
}
