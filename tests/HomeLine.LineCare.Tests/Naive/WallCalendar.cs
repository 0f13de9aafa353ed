using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>A calendar on the wall at the patient's place, read the slow way: by looking at the clock every quarter of an hour.</summary>
internal sealed class WallCalendar(DateTimeZone zone)
{
    private readonly Dictionary<LocalDate, Instant> _mornings = [];

    /// <summary>The day the wall shows at an instant.</summary>
    public LocalDate DayAt(Instant at) => at.InZone(zone).Date;

    /// <summary>The first quarter of an hour at which the wall shows this day. Where midnight does not exist the day starts later.</summary>
    public Instant Morning(LocalDate day)
    {
        if (_mornings.TryGetValue(day, out var known)) return known;
        var at = Instant.FromUtc(day.Year, day.Month, day.Day, 0, 0) - Duration.FromHours(16);
        while (DayAt(at) < day) at += Duration.FromMinutes(15);
        return _mornings[day] = at;
    }

    /// <summary>The end of a day is the start of the next.</summary>
    public Instant Midnight(LocalDate day) => Morning(day.PlusDays(1));

    /// <summary>The first quarter of an hour of the day at which the wall clock shows twelve or later.</summary>
    public Instant Noon(LocalDate day)
    {
        var at = Morning(day);
        while (at.InZone(zone).TimeOfDay < LocalTime.Noon) at += Duration.FromMinutes(15);
        return at;
    }

    /// <summary>So many hours on, hour by hour.</summary>
    public static Instant HoursOn(Instant at, decimal hours)
    {
        for (; hours >= 1; hours--) at += Duration.FromHours(1);
        return at + Duration.FromMinutes((double)(hours * 60));
    }

    /// <summary>So many days on or back, day by day.</summary>
    public static LocalDate DaysOn(LocalDate day, int days)
    {
        for (; days > 0; days--) day = day.PlusDays(1);
        for (; days < 0; days++) day = day.PlusDays(-1);
        return day;
    }
}
