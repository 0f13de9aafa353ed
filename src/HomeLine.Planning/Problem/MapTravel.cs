using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>
/// Travel times from a flat map: the shortest chain of straight segments that passes barriers only at open crossings,
/// turned into minutes by the settings. Needs no network and no licence; an agency with a road matrix uses that instead.
/// </summary>
public sealed class MapTravel : ITravelTimes
{
    private readonly int[] _minutes;
    private readonly double[] _km;
    private readonly ImmutableArray<MapPoint> _places;
    private readonly ImmutableArray<MapBarrier> _barriers;
    private readonly MapSettings _settings;

    /// <summary>Computes the whole matrix once.</summary>
    /// <param name="places">The places; their positions in the array are the place indices.</param>
    /// <param name="barriers">Rivers, ridges, railways.</param>
    /// <param name="settings">Circuity, speeds, parking.</param>
    /// <param name="closed">Names of crossings that are closed; unknown names are refused.</param>
    /// <exception cref="ArgumentException">A coordinate is not a number, or a closed crossing is unknown.</exception>
    public MapTravel(
        ImmutableArray<MapPoint> places,
        ImmutableArray<MapBarrier> barriers,
        MapSettings settings,
        IEnumerable<string>? closed = null)
    {
        foreach (MapPoint place in places)
        {
            if (!double.IsFinite(place.X) || !double.IsFinite(place.Y))
                throw new ArgumentException("A place has a coordinate that is not a number.", nameof(places));
        }

        _places = places;
        _barriers = barriers;
        _settings = settings;
        Closed = [.. (closed ?? []).Order(StringComparer.Ordinal)];
        var known = barriers.SelectMany(b => b.Crossings).Select(c => c.Name).ToHashSet(StringComparer.Ordinal);
        if (Closed.FirstOrDefault(c => !known.Contains(c)) is { } unknown)
            throw new ArgumentException($"There is no crossing named {unknown} on this map.", nameof(closed));
        _km = ShortestPaths();
        _minutes = Array.ConvertAll(_km, km => double.IsInfinity(km) ? ITravelTimes.Unreachable : settings.Minutes(km));
    }

    /// <summary>Number of places.</summary>
    public int PlaceCount => _places.Length;

    /// <summary>Names of the closed crossings, in order.</summary>
    public ImmutableArray<string> Closed { get; }

    /// <inheritdoc/>
    public int Minutes(int from, int to) => _minutes[(from * _places.Length) + to];

    /// <summary>Length of the shortest straight path, kilometres; positive infinity when there is none.</summary>
    /// <param name="from">Index of the place left.</param>
    /// <param name="to">Index of the place reached.</param>
    public double Kilometres(int from, int to) => _km[(from * _places.Length) + to];

    /// <summary>The same map with other crossings closed.</summary>
    /// <param name="closed">Names of all crossings closed now.</param>
    public MapTravel WithClosed(IEnumerable<string> closed) => new(_places, _barriers, _settings, closed);

    private double[] ShortestPaths()
    {
        MapPoint[] crossings = OpenCrossings();
        double[,] between = BetweenCrossings(crossings);
        int n = _places.Length, m = crossings.Length;
        var seen = new double[n, m];
        for (int i = 0; i < n; i++)
            for (int c = 0; c < m; c++) seen[i, c] = Straight(_places[i], crossings[c]);

        var km = new double[n * n];
        var reach = new double[m];
        for (int i = 0; i < n; i++)
        {
            for (int c = 0; c < m; c++)
            {
                reach[c] = double.PositiveInfinity;
                for (int b = 0; b < m; b++) reach[c] = Math.Min(reach[c], seen[i, b] + between[b, c]);
            }

            for (int j = i + 1; j < n; j++)
            {
                double best = Straight(_places[i], _places[j]);
                for (int c = 0; c < m; c++) best = Math.Min(best, reach[c] + seen[j, c]);
                km[(i * n) + j] = km[(j * n) + i] = best;
            }
        }

        return km;
    }

    private MapPoint[] OpenCrossings() =>
    [
        .. from barrier in _barriers
           from crossing in barrier.Crossings
           where !Closed.Contains(crossing.Name)
           select barrier.Run == BarrierRun.NorthSouth
               ? new MapPoint(barrier.At, crossing.Along)
               : new MapPoint(crossing.Along, barrier.At),
    ];

    private double[,] BetweenCrossings(MapPoint[] crossings)
    {
        int m = crossings.Length;
        var d = new double[m, m];
        for (int a = 0; a < m; a++)
            for (int b = 0; b < m; b++) d[a, b] = Straight(crossings[a], crossings[b]);
        for (int via = 0; via < m; via++)
            for (int a = 0; a < m; a++)
                for (int b = 0; b < m; b++) d[a, b] = Math.Min(d[a, b], d[a, via] + d[via, b]);
        return d;
    }

    private double Straight(MapPoint a, MapPoint b)
    {
        foreach (MapBarrier barrier in _barriers)
        {
            if (Blocks(barrier, a, b)) return double.PositiveInfinity;
        }

        double dx = a.X - b.X, dy = a.Y - b.Y;
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>Whether the segment passes from one side to the other; a point on the barrier itself is on both sides.</summary>
    private static bool Blocks(MapBarrier barrier, MapPoint a, MapPoint b)
    {
        bool northSouth = barrier.Run == BarrierRun.NorthSouth;
        double sideA = (northSouth ? a.X : a.Y) - barrier.At, sideB = (northSouth ? b.X : b.Y) - barrier.At;
        if (sideA * sideB >= 0) return false;
        double alongA = northSouth ? a.Y : a.X, alongB = northSouth ? b.Y : b.X;
        double at = alongA + ((alongB - alongA) * sideA / (sideA - sideB));
        return at > barrier.From && at < barrier.To;
    }
}
