using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Pages.Week;

/// <summary>Which week an address means: weeks of the board begin on Monday.</summary>
public static class WeekOf
{
    /// <summary>The Monday on or before the day in the address; today's when the address holds no readable day.</summary>
    public static LocalDate Day(string? iso, LocalDate today)
    {
        LocalDate day = iso is not null && LocalDatePattern.Iso.Parse(iso).TryGetValue(default, out LocalDate asked) ? asked : today;
        return day.DayOfWeek == IsoDayOfWeek.Monday ? day : day.Previous(IsoDayOfWeek.Monday);
    }
}
