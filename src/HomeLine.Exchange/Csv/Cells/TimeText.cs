using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>Times as the files write them: 24-hour, seconds only when there are any.</summary>
internal static class TimeText
{
    private static readonly LocalTimePattern Minutes = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalTimePattern Full = LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss.FFFFFFFFF");
    private static readonly OffsetPattern OffsetText = OffsetPattern.CreateWithInvariantCulture("+HH:mm");

    public static string Write(LocalTime time) =>
        time.Second == 0 && time.NanosecondOfSecond == 0 ? Minutes.Format(time) : Full.Format(time);

    public static string Write(LocalDate date) => LocalDatePattern.Iso.Format(date);

    public static string Write(LocalDateTime moment) => $"{Write(moment.Date)}T{Write(moment.TimeOfDay)}";

    public static string Write(LocalDate? date) => date is { } day ? Write(day) : "";

    public static string Write(LocalTime? time) => time is { } clock ? Write(clock) : "";

    public static string Write(LocalDateTime? moment) => moment is { } local ? Write(local) : "";

    /// <summary>Local time in the zone; with its offset only where the clock shows that time twice.</summary>
    public static string Write(Instant at, DateTimeZone zone)
    {
        ZonedDateTime moment = at.InZone(zone);
        string text = Write(moment.LocalDateTime);
        return zone.MapLocal(moment.LocalDateTime).Count > 1 ? text + Write(moment.Offset) : text;
    }

    public static string Write(Offset offset) => OffsetText.Format(offset);

    public static LocalTime? ReadTime(string text)
    {
        ParseResult<LocalTime> read = Minutes.Parse(text.Length == 4 && text[1] == ':' ? "0" + text : text);
        if (!read.Success) read = Full.Parse(text);
        return read.Success ? read.Value : null;
    }

    /// <summary>Splits <c>14:00-05:00</c> into the clock time and its offset from UTC.</summary>
    public static (LocalTime Time, Offset? Offset)? ReadClock(string text)
    {
        int sign = text.IndexOfAny(['+', '-']);
        if (sign < 0) return ReadTime(text) is { } plain ? (plain, null) : null;
        ParseResult<Offset> offset = OffsetText.Parse(text[sign..]);
        return offset.Success && ReadTime(text[..sign]) is { } time ? (time, offset.Value) : null;
    }

    /// <summary>A wall clock time of a zone as an instant, or why there is none.</summary>
    public static (Instant? At, string? Problem) Resolve(LocalDateTime local, Offset? offset, DateTimeZone zone)
    {
        if (offset is { } given) return (local.WithOffset(given).ToInstant(), null);
        NodaTime.TimeZones.ZoneLocalMapping mapping = zone.MapLocal(local);
        return mapping.Count switch
        {
            1 => (mapping.Single().ToInstant(), null),
            0 => (null, $"This time did not exist in {zone.Id}: the clocks went forward over it."),
            _ => (null, string.Create(CultureInfo.InvariantCulture,
                $"This time came twice in {zone.Id}. Add {Write(mapping.First().Offset)} for the first or {Write(mapping.Last().Offset)} for the second.")),
        };
    }
}
