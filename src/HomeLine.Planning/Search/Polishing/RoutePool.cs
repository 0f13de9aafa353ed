using HomeLine.Planning.Cost;

namespace HomeLine.Planning.Search.Polishing;

/// <summary>The nurse-days of accepted plans, up to a hundred for each nurse and day, the cheapest order of each set of care.</summary>
internal sealed class RoutePool(CompiledWeek week)
{
    private const int KeptPerRoute = 100;

    private readonly RouteColumn?[] _columns = new RouteColumn?[week.Routes.Count * KeptPerRoute];
    private readonly int[] _next = new int[week.Routes.Count];

    public IEnumerable<RouteColumn> Columns => _columns.OfType<RouteColumn>();

    public void Note(WeekState state, int route)
    {
        if (state.Visits[route] == 0 || !week.Routes.Open[route]) return;
        ulong key = KeyOf(state, route);
        if (key == 0) return;
        int first = route * KeptPerRoute, at = first + (_next[route] % KeptPerRoute);
        double cost = -1;
        for (int i = first; i < first + KeptPerRoute; i++)
        {
            if (_columns[i] is not { } known || known.Key != key) continue;
            cost = CostOf(state, route);
            if (known.Cost <= cost) return;
            at = i;
        }

        if (at == first + (_next[route] % KeptPerRoute)) _next[route]++;
        _columns[at] = Column(state, route, key, cost < 0 ? CostOf(state, route) : cost);
    }

    /// <summary>The nurse-day as it stands.</summary>
    public RouteColumn ColumnOf(WeekState state, int route) => Column(state, route, KeyOf(state, route), CostOf(state, route));

    private static RouteColumn Column(WeekState state, int route, ulong key, double cost)
    {
        ReadOnlySpan<int> order = state.OrderOf(route);
        var visits = new int[order.Length][];
        for (int i = 0; i < order.Length; i++)
        {
            var units = new List<int>();
            for (int u = state.FirstUnit[order[i]]; u >= 0; u = state.UnitNext[u]) units.Add(u);
            visits[i] = [.. units];
        }

        return new RouteColumn(route, key, visits, cost);
    }

    /// <summary>0 for a day with a two-person or fixed visit: it is tied to another day.</summary>
    private static ulong KeyOf(WeekState state, int route)
    {
        ulong key = Mixed((ulong)route + 0x51UL);
        foreach (int slot in state.OrderOf(route))
        {
            if (state.Pinned[slot]) return 0;
            for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u]) key ^= Mixed((ulong)u << 20);
        }

        return key;
    }

    private double CostOf(WeekState state, int route)
    {
        double cost = state.Figures[route].Cost + (state.Visits[route] * week.Problem.Rules.VisitPriceMinutes);
        int nurse = week.Routes.Nurse[route], day = week.Routes.Day[route];
        foreach (int slot in state.OrderOf(route))
        {
            cost += week.People.VisitPoints[(state.Patient[slot] * week.NurseCount) + nurse] * Blend.People;
            for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
            {
                foreach (int task in week.Units.Tasks[u]) cost += Math.Max(0, week.Tasks.LastDayOnTime[task] - (double)day) * Blend.UnusedLife;
            }
        }

        return cost;
    }

    private static ulong Mixed(ulong z)
    {
        z += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
