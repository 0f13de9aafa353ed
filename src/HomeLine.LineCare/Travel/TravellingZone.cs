using System.Collections.Immutable;
using NodaTime;
using NodaTime.TimeZones;

namespace HomeLine.LineCare.Travel;

/// <summary>
/// The zone of a patient who travels: the home's, and during each stay that of the place. A stay begins with the home's midnight and ends with the
/// place's. Date clocks count the days of the wall clock where the patient is; elapsed hours do not care. Where the clocks change within a day of
/// leaving or coming home, the start of that one day may be an hour off.
/// </summary>
public sealed class TravellingZone : DateTimeZone
{
    private readonly ImmutableArray<(Instant From, Instant To, DateTimeZone Zone)> _stretches;
    private readonly DateTimeZone _home;

    private TravellingZone(DateTimeZone home, ImmutableArray<(Instant From, Instant To, DateTimeZone Zone)> stretches)
        : base(home.Id, false, stretches.Select(s => s.Zone.MinOffset).Append(home.MinOffset).Min(), stretches.Select(s => s.Zone.MaxOffset).Append(home.MaxOffset).Max()) =>
        (_home, _stretches) = (home, stretches);

    /// <summary>The zone to count a patient's days in; the home's own when there is no stay. Of stays that overlap the earlier one counts.</summary>
    /// <param name="home">Zone of the home.</param>
    /// <param name="stays">Stays elsewhere, in any order.</param>
    public static DateTimeZone Of(DateTimeZone home, IEnumerable<Stay> stays)
    {
        ArgumentNullException.ThrowIfNull(home);
        ArgumentNullException.ThrowIfNull(stays);
        var stretches = ImmutableArray.CreateBuilder<(Instant From, Instant To, DateTimeZone Zone)>();
        foreach (var stay in stays.Where(stay => stay.Through >= stay.From).OrderBy(stay => stay.From))
        {
            var from = home.AtStartOfDay(stay.From).ToInstant();
            var to = stay.Zone.AtStartOfDay(stay.Through.PlusDays(1)).ToInstant();
            if (stretches.Count > 0 && from < stretches[^1].To) from = stretches[^1].To;
            if (from < to) stretches.Add((from, to, stay.Zone));
        }

        return stretches.Count == 0 ? home : new TravellingZone(home, stretches.ToImmutable());
    }

    /// <inheritdoc/>
    public override ZoneInterval GetZoneInterval(Instant instant)
    {
        var (from, to, zone) = StretchAt(instant);
        var own = zone.GetZoneInterval(instant);
        var start = Later(own.HasStart ? own.Start : null, from);
        var end = Earlier(own.HasEnd ? own.End : null, to);
        return new ZoneInterval(own.Name, start, end, own.WallOffset, own.Savings);
    }

    private (Instant? From, Instant? To, DateTimeZone Zone) StretchAt(Instant instant)
    {
        Instant? from = null;
        foreach (var stretch in _stretches)
        {
            if (instant < stretch.From) return (from, stretch.From, _home);
            if (instant < stretch.To) return (stretch.From, stretch.To, stretch.Zone);
            from = stretch.To;
        }

        return (from, null, _home);
    }

    private static Instant? Later(Instant? one, Instant? other) => one is null ? other : other is null || one > other ? one : other;

    private static Instant? Earlier(Instant? one, Instant? other) => one is null ? other : other is null || one < other ? one : other;
}
