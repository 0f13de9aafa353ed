using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;
using MapPoint = HomeLine.Agency.Roster.MapPoint;
using PlanPoint = HomeLine.Planning.Problem.MapPoint;

namespace HomeLine.Agency.DayMap;

/// <summary>The straight pieces of the shortest way between places: through the open crossings it has to pass.</summary>
internal sealed class RoadPieces
{
    private const double Hair = 1e-6;

    private readonly MapTravel _travel;
    private readonly TripTimes _trips;
    private readonly ImmutableArray<MapPoint> _points;
    private readonly ImmutableArray<(string Name, int Place)> _crossings;

    /// <param name="map">The map with what is closed.</param>
    /// <param name="places">Doors.</param>
    /// <param name="slow">Slow hours of the day, minutes from midnight.</param>
    public RoadPieces(AgencyMap map, IEnumerable<MapPoint> places, ImmutableArray<SlowHours> slow)
    {
        ImmutableArray<MapPoint> doors = [.. places.Distinct()];
        ImmutableArray<Roster.Crossing> open = [.. map.Barriers.SelectMany(b => b.Crossings).Where(c => !c.Closed)];
        _points = [.. doors, .. open.Select(c => c.At)];
        _crossings = [.. open.Select((c, i) => (c.Name, doors.Length + i))];
        _travel = RoadTravel.Between(map, [.. _points.Select(p => new PlanPoint(p.X, p.Y))]);
        _trips = new TripTimes(_travel, [], slow);
    }

    /// <summary>Minutes at the usual pace.</summary>
    public int Minutes(MapPoint from, MapPoint to) => _travel.Minutes(_points.IndexOf(from), _points.IndexOf(to));

    /// <summary>Minutes of a trip left for at a minute of the day, slow hours counted.</summary>
    public int Leaving(MapPoint from, MapPoint to, int leave) => _trips.Leaving(_points.IndexOf(from), _points.IndexOf(to), leave);

    /// <summary>Minutes before an arrival at which one has to leave, slow hours counted.</summary>
    public int Reaching(MapPoint from, MapPoint to, int arrive) => _trips.Reaching(_points.IndexOf(from), _points.IndexOf(to), arrive);

    /// <summary>The points after the first one, and the names of the crossings passed.</summary>
    public (ImmutableArray<MapPoint> Points, ImmutableArray<string> Over) Way(MapPoint from, MapPoint to)
    {
        var places = new List<int>();
        Walk(_points.IndexOf(from), _points.IndexOf(to), places, _crossings.Length);
        return ([.. places.Select(p => _points[p])], [.. places.SkipLast(1).Select(p => _crossings.First(c => c.Place == p).Name)]);
    }

    private void Walk(int from, int to, List<int> places, int left)
    {
        double whole = _travel.Kilometres(from, to);
        if (double.IsInfinity(whole))
        {
            places.Add(to);
            return;
        }

        MapPoint a = _points[from], b = _points[to];
        if (left > 0 && whole > Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y))) + Hair)
        {
            foreach ((_, int crossing) in _crossings.Where(c => c.Place != from && c.Place != to))
            {
                if (Math.Abs(_travel.Kilometres(from, crossing) + _travel.Kilometres(crossing, to) - whole) > Hair) continue;
                Walk(from, crossing, places, left - 1);
                Walk(crossing, to, places, left - 1);
                return;
            }
        }

        places.Add(to);
    }
}
