namespace HomeLine.Planning.Routing;

/// <summary>
/// Good routes seen by a search, one for each vehicle kind and set of visits: the cheapest order. When it is full, the older half is forgotten. Any search whose
/// routes are sets of numbered visits can fill one.
/// </summary>
public sealed class RoutePool
{
    private readonly int _mostRoutes;
    private readonly int _mostCells;
    private Generation _young;
    private Generation _old;

    /// <summary>An empty pool.</summary>
    /// <param name="mostRoutes">Most routes it holds, above 1.</param>
    /// <param name="meanVisits">Visits a route is expected to have; decides the memory set aside.</param>
    public RoutePool(int mostRoutes, int meanVisits)
    {
        _mostRoutes = mostRoutes / 2;
        _mostCells = _mostRoutes * Math.Max(4, meanVisits);
        _young = new Generation(_mostRoutes, _mostCells);
        _old = new Generation(_mostRoutes, _mostCells);
    }

    /// <summary>Routes held.</summary>
    public int Count => _young.Count + _old.Count;

    /// <summary>Adds a route unless one with the same kind and visits is there at no more cost.</summary>
    /// <param name="kind">The vehicle kind.</param>
    /// <param name="visits">The visits in order.</param>
    /// <param name="cost">What the route costs.</param>
    public void Add(int kind, ReadOnlySpan<int> visits, long cost)
    {
        ulong key = Chance.Mixed(0x5EED_0000UL + (ulong)kind);
        foreach (int visit in visits) key += Chance.Mixed((ulong)visit);
        if (_young.Update(key, visits, cost)) return;
        if (_young.Count >= _mostRoutes || _young.Cells + visits.Length > _mostCells)
        {
            (_young, _old) = (_old, _young);
            _young.Clear();
        }

        if (visits.Length <= _mostCells) _young.Append(key, kind, visits, cost);
    }

    /// <summary>All routes, each set of visits once, the youngest first.</summary>
    public IEnumerable<PooledRoute> Routes()
    {
        var seen = new HashSet<ulong>();
        foreach (PooledRoute route in _young.All().Concat(_old.All()))
            if (seen.Add(route.Key))
                yield return route;
    }

    private sealed class Generation(int mostRoutes, int mostCells)
    {
        private readonly int[] _table = new int[(int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, 2 * mostRoutes))];
        private readonly PooledRoute[] _routes = new PooledRoute[mostRoutes];
        private readonly int[] _cells = new int[mostCells];

        public int Count { get; private set; }
        public int Cells { get; private set; }

        public bool Update(ulong key, ReadOnlySpan<int> visits, long cost)
        {
            int at = _table[Slot(key)] - 1;
            if (at < 0) return false;
            PooledRoute known = _routes[at];
            if (cost >= known.Cost) return true;
            visits.CopyTo(known.Visits.AsSpan());
            _routes[at] = known with { Cost = cost };
            return true;
        }

        public void Append(ulong key, int kind, ReadOnlySpan<int> visits, long cost)
        {
            visits.CopyTo(_cells.AsSpan(Cells));
            _routes[Count] = new PooledRoute(key, kind, cost, new ArraySegment<int>(_cells, Cells, visits.Length));
            _table[Slot(key)] = ++Count;
            Cells += visits.Length;
        }

        public void Clear()
        {
            Count = 0;
            Cells = 0;
            Array.Clear(_table);
        }

        public IEnumerable<PooledRoute> All() => _routes.Take(Count);

        private int Slot(ulong key)
        {
            int mask = _table.Length - 1, slot = (int)(key & (ulong)mask);
            while (_table[slot] != 0 && _routes[_table[slot] - 1].Key != key) slot = (slot + 1) & mask;
            return slot;
        }
    }
}

/// <summary>A route of a pool.</summary>
/// <param name="Key">A number made of kind and visits, equal for the same set in any order.</param>
/// <param name="Kind">The vehicle kind.</param>
/// <param name="Cost">What it costs.</param>
/// <param name="Visits">The visits in order.</param>
public readonly record struct PooledRoute(ulong Key, int Kind, long Cost, ArraySegment<int> Visits);
