using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>The times of a visit as moments. A time before the arrival is after midnight: whoever is called out at 23:50 leaves the next day.</summary>
public sealed record VisitTimes(Instant Arrived, Instant? Left, VisitEntry Entry, DateTimeZone Zone)
{
    /// <summary>How much earlier than the arrival a time may be and still be of the same day: a nurse who notes the draw before the bell.</summary>
    private static readonly Period Slip = Period.FromHours(6);

    /// <summary>Empty when the arrival is not given.</summary>
    public static VisitTimes? Of(VisitEntry entry, DateTimeZone zone)
    {
        if (entry.Arrived is not { } arrived) return null;
        var times = new VisitTimes(entry.Day.At(arrived).InZoneLeniently(zone).ToInstant(), null, entry, zone);
        return times with
        {
            Left = entry.Left is { } left ? (left < arrived ? entry.Day.PlusDays(1) : entry.Day).At(left).InZoneLeniently(zone).ToInstant() : null,
        };
    }

    /// <summary>A time noted during the visit; the arrival when none was.</summary>
    public Instant At(LocalTime? time)
    {
        if (time is not { } noted) return Arrived;
        LocalDateTime local = Entry.Day.At(noted);
        if (local < Entry.Day.At(Entry.Arrived!.Value) - Slip) local = local.PlusDays(1);
        return local.InZoneLeniently(Zone).ToInstant();
    }
}
