using NodaTime;
using NodaTime.Text;

namespace HomeLine.Web.Parts;

/// <summary>Dates and times as people read them here, the same whatever the machine's language: weekday, day, month; 24 hours.</summary>
public static class PlainDates
{
    private static readonly LocalDatePattern ShortDay = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDatePattern LongDay = LocalDatePattern.CreateWithInvariantCulture("dddd d MMMM yyyy");
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalDateTimePattern Stamp = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM yyyy, HH:mm");

    /// <summary>For example <c>Wed 10 Mar</c>.</summary>
    public static string InWords(this LocalDate day) => ShortDay.Format(day);

    /// <summary>For example <c>Wednesday 10 March 2027</c>.</summary>
    public static string InFull(this LocalDate day) => LongDay.Format(day);

    /// <summary>For example <c>08:10</c>.</summary>
    public static string InWords(this LocalTime time) => Clock.Format(time);

    /// <summary>For example <c>Tue 9 Mar 2027, 07:52</c>.</summary>
    public static string InWords(this LocalDateTime moment) => Stamp.Format(moment);

    /// <summary>For example <c>Tue 9 Mar 2027, 07:52</c>, in the zone given.</summary>
    public static string InWords(this Instant instant, DateTimeZone zone) => Stamp.Format(instant.InZone(zone).LocalDateTime);

    /// <summary>The date as a machine reads it, for addresses and the <c>datetime</c> attribute.</summary>
    public static string Iso(this LocalDate day) => LocalDatePattern.Iso.Format(day);

    /// <summary>For example <c>1 h 15 min</c> or <c>45 min</c>.</summary>
    public static string Minutes(int minutes) => minutes switch
    {
        < 60 => $"{minutes} min",
        _ when minutes % 60 == 0 => $"{minutes / 60} h",
        _ => $"{minutes / 60} h {minutes % 60} min",
    };
}
