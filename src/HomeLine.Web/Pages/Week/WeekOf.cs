using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Pages.Week;

/// <summary>Which week an address means: weeks of the board begin on Monday.</summary>
public static class WeekOf
{
    /// <summary>The Monday on or before the day in the address; today's when the address holds no readable day.</summary>
    public static LocalDate Day(string? iso, LocalDate today) => MondayOf(Read(iso) ?? today);

    /// <summary>The Monday on or before a day.</summary>
    public static LocalDate MondayOf(LocalDate day) => day.DayOfWeek == IsoDayOfWeek.Monday ? day : day.Previous(IsoDayOfWeek.Monday);

    /// <summary>The day of the week that a page of one day shows: the one asked for, else today where it lies in the week, else the Monday.</summary>
    /// <param name="asked">The day the address asks for; empty for none.</param>
    /// <param name="iso">The day by which the address names the week. A Monday means the week and no day of it.</param>
    /// <param name="monday">The week's Monday.</param>
    /// <param name="today">Today.</param>
    public static LocalDate Shown(string? asked, string? iso, LocalDate monday, LocalDate today)
    {
        LocalDate? named = Read(asked) ?? (Read(iso) is { } day && day != monday ? day : null);
        LocalDate shown = named ?? today;
        return MondayOf(shown) == monday ? shown : monday;
    }

    private static LocalDate? Read(string? iso) =>
        iso is not null && LocalDatePattern.Iso.Parse(iso).TryGetValue(default, out LocalDate day) ? day : null;
}
