using System.Collections.Immutable;

namespace HomeLine.Planning.Routing;

/// <summary>Collects the routes of a search and now and then chooses the best set of them.</summary>
internal sealed class Polish
{
    /// <summary>Own limits: routes kept, and cells of the relaxation's matrix it may cost.</summary>
    private const int MostRoutes = 40_000, MostCells = 300_000;

    /// <summary>Own value: routes are kept of plans at most this much above the best one.</summary>
    private const double Above = 0.01;

    private readonly RoutingModel _model;
    private readonly RoutePool _pool;
    private readonly PoolProblem _problem;
    private readonly int[] _visits;

    public Polish(RoutingModel model)
    {
        _model = model;
        _pool = new RoutePool(MostRoutes, Math.Min(60, Math.Max(10, model.Requests / 10)));
        _visits = new int[model.Visits];
        _problem = new PoolProblem(
            model.Visits,
            [.. model.Patterns.Select((patterns, r) => patterns.Select(pattern => VisitsOf(r, pattern)).ToArray())],
            [.. model.Problem.Requests.Select(request => (long?)request.PriceOfLeavingOut)],
            [.. Enumerable.Range(0, model.Problem.Kinds.Length).Select(kind => model.Vehicles.Count(of => of == kind))]);
    }

    /// <summary>Remembers the routes of the last move of a plan worth it.</summary>
    public void Notice(RoutingState state, long best)
    {
        if (state.Judged > best + (Above * best)) return;
        for (int i = 0; i < state.TouchedCount; i++) Notice(state, state.TouchedAt(i));
    }

    /// <summary>A better plan made of routes seen, or null.</summary>
    public RoutingPlan? Better(RoutingPlan best, double effort, double seconds, CancellationToken cancel)
    {
        if (best.Missing > 0) return null;
        var routes = new List<PooledRoute>();
        int cells = 0;
        foreach (PooledRoute route in _pool.Routes())
        {
            cells += route.Visits.Count;
            if (cells > MostCells) break;
            routes.Add(route);
        }

        IReadOnlyList<int>? chosen = new PoolChoice(_problem, routes).Better(best.Cost, effort, seconds, cancel);
        return chosen is null ? null : Plan(chosen.Select(i => routes[i]));
    }

    private void Notice(RoutingState state, int vehicle)
    {
        RouteHead route = state.Routes[vehicle];
        if (route.Count == 0 || route.Load > route.Capacity) return;
        int count = 0;
        long cost = _model.Problem.Kinds[route.Kind].FixedCost + route.PricedDuration + state.Links[route.First].Edge;
        for (int v = state.Links[route.First].Next; v != route.Last; v = state.Links[v].Next)
        {
            _visits[count++] = v;
            cost += state.Links[v].Edge;
        }

        _pool.Add(route.Kind, _visits.AsSpan(0, count), cost);
    }

    private RoutingPlan Plan(IEnumerable<PooledRoute> routes)
    {
        ImmutableArray<PlannedRoute> planned = [.. routes.Select(route => new PlannedRoute(route.Kind, [.. route.Visits.Select(visit => _model.Of[visit].Request)]))];
        return new RoutingPlan(planned, [], routes.Sum(route => route.Cost), 0);
    }

    private int[] VisitsOf(int request, int pattern) =>
        [.. Enumerable.Range(0, _model.Days).Where(day => (pattern >> day & 1) != 0).Select(day => (day * _model.Requests) + request)];
}
