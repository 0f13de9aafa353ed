using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>The agency's own map: barriers with their crossings, speeds, towns, and where specimens are handed in.</summary>
public sealed record AgencyMap
{
    public required MapPoint BranchPlace { get; init; }
    public ImmutableArray<MapBarrier> Barriers { get; init; } = [];
    public ImmutableArray<Town> Towns { get; init; } = [];
    public ImmutableArray<SpecimenDrop> Drops { get; init; } = [];
    public required RoadFactors Roads { get; init; }
    public double Width { get; init; } = 60;
    public double Height { get; init; } = 44;

    /// <summary>The town a place belongs to: the nearest; empty on a map without towns.</summary>
    public Town? NearestTown(MapPoint at) => Towns.MinBy(t => Math.Pow(t.At.X - at.X, 2) + Math.Pow(t.At.Y - at.Y, 2));

    /// <summary>The same map with more crossings closed.</summary>
    public AgencyMap WithClosed(IReadOnlyCollection<string> crossings) => crossings.Count == 0
        ? this
        : this with { Barriers = [.. Barriers.Select(b => b with { Crossings = [.. b.Crossings.Select(c => crossings.Contains(c.Name) ? c with { Closed = true } : c)] })] };
}

/// <summary>A straight line, parallel to an edge of the map, that roads cross only at its crossings.</summary>
/// <param name="Name">River, ridge …</param>
/// <param name="Vertical">True for a line x = <paramref name="At"/>, false for y = <paramref name="At"/>.</param>
/// <param name="At">Where it lies, km.</param>
/// <param name="From">Where it begins along the other axis, km.</param>
/// <param name="To">Where it ends, km.</param>
/// <param name="Crossings">Bridges and passes.</param>
public sealed record MapBarrier(string Name, bool Vertical, double At, double From, double To, ImmutableArray<Crossing> Crossings);

/// <summary>A bridge or a pass, and when it is closed.</summary>
public sealed record Crossing(string Name, MapPoint At, bool Closed = false);

/// <summary>A town, for labels on the map.</summary>
public sealed record Town(string Code, string Name, MapPoint At, string State);

/// <summary>Where specimens are handed in, with the courier's last collection by weekday, branch time.</summary>
public sealed record SpecimenDrop(string Name, MapPoint At, ImmutableArray<CourierTime> Courier);

/// <summary>The courier's collection on one weekday.</summary>
public sealed record CourierTime(IsoDayOfWeek Weekday, LocalTime At);

/// <summary>How straight distance becomes minutes: road = circuity × distance; speed by distance band; parking added.</summary>
/// <param name="Circuity">Road kilometres per straight kilometre.</param>
/// <param name="Bands">Speeds, by the longest straight distance each holds for, ascending.</param>
/// <param name="ParkingMinutes">Minutes from the car to the door.</param>
public sealed record RoadFactors(double Circuity, ImmutableArray<SpeedBand> Bands, int ParkingMinutes)
{
    /// <summary>Hours in which everybody drives slower, branch time; those of one weekday do not overlap.</summary>
    public ImmutableArray<SlowTime> SlowTimes { get; init; } = [];
}

/// <summary>Hours of some weekdays in which everybody drives slower.</summary>
/// <param name="Weekdays">On which days.</param>
/// <param name="From">From when, branch time.</param>
/// <param name="To">Until when, excluded.</param>
/// <param name="SpeedPercent">Speed then, of a hundred of the usual one, 1 to 100.</param>
public sealed record SlowTime(ImmutableArray<IsoDayOfWeek> Weekdays, LocalTime From, LocalTime To, int SpeedPercent);

/// <summary>Speed for straight distances up to <paramref name="UpToKm"/>, included.</summary>
public sealed record SpeedBand(double UpToKm, double KmPerHour);
