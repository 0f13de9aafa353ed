using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>A point of the flat map.</summary>
/// <param name="X">Kilometres east.</param>
/// <param name="Y">Kilometres north.</param>
public readonly record struct MapPoint(double X, double Y);

/// <summary>Which way a barrier runs.</summary>
public enum BarrierRun
{
    /// <summary>North to south: the line <c>x = At</c>; extents and crossings are measured along y.</summary>
    NorthSouth,

    /// <summary>West to east: the line <c>y = At</c>; extents and crossings are measured along x.</summary>
    WestEast,
}

/// <summary>A place where a barrier can be crossed: a bridge, a pass, a ford.</summary>
/// <param name="Name">Its name, unique on the map; closures name it.</param>
/// <param name="Along">Where on the barrier, kilometres along its run.</param>
public sealed record Crossing(string Name, double Along);

/// <summary>
/// A straight barrier that roads cross only at its crossings. Its two ends are excluded: a road that touches an end goes round it.
/// </summary>
/// <param name="Name">Its name.</param>
/// <param name="Run">Which way it runs.</param>
/// <param name="At">The fixed coordinate, kilometres.</param>
/// <param name="From">Where it begins along its run, kilometres, excluded; negative infinity for without end.</param>
/// <param name="To">Where it ends along its run, kilometres, excluded; positive infinity for without end.</param>
/// <param name="Crossings">Where it can be crossed.</param>
public sealed record MapBarrier(
    string Name,
    BarrierRun Run,
    double At,
    double From,
    double To,
    ImmutableArray<Crossing> Crossings);

/// <summary>A travelling speed for trips up to a length.</summary>
/// <param name="UpToKm">Longest straight path this speed holds for, kilometres, included; positive infinity for the last band.</param>
/// <param name="KmPerHour">Speed on the road, kilometres an hour.</param>
public sealed record SpeedBand(double UpToKm, double KmPerHour);

/// <summary>How a straight path on the map becomes minutes from door to door.</summary>
/// <param name="Circuity">Road kilometres per kilometre of straight path, at least 1.</param>
/// <param name="ParkingMinutes">Minutes added to every trip, also between two homes at one address.</param>
/// <param name="SpeedBands">Speeds by length of the straight path (before circuity), ascending; the last one has no upper length.</param>
public sealed record MapSettings(double Circuity, int ParkingMinutes, ImmutableArray<SpeedBand> SpeedBands)
{
    /// <summary>
    /// Our own default: circuity 1.3 (published road-to-straight ratios run from about 1.2 in towns to about 1.4 over a country),
    /// 30 km/h up to 4 km, 50 up to 15, 70 beyond, 4 minutes to park. An agency should set its own.
    /// </summary>
    public static MapSettings Default { get; } = new(
        1.3,
        4,
        [new SpeedBand(4, 30), new SpeedBand(15, 50), new SpeedBand(double.PositiveInfinity, 70)]);

    /// <summary>Whole minutes for a straight path, rounded up, parking included.</summary>
    /// <param name="km">Length of the straight path, kilometres.</param>
    public int Minutes(double km)
    {
        foreach (SpeedBand band in SpeedBands)
        {
            // A hair is taken off before rounding up, so that a sum of square roots does not turn 20 minutes into 21.
            if (km <= band.UpToKm) return (int)Math.Ceiling((60 * Circuity * km / band.KmPerHour) - 1e-9) + ParkingMinutes;
        }

        return ITravelTimes.Unreachable;
    }
}
