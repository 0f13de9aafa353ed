using System.Collections.Immutable;

namespace HomeLine.Planning.Routing;

/// <summary>A copy of the routes, cheap enough to take at every new best plan.</summary>
internal sealed class PlanStore
{
    private readonly RoutingModel _model;
    private readonly int[] _cells;
    private int _length;

    public PlanStore(RoutingModel model)
    {
        _model = model;
        _cells = new int[model.Visits + (2 * model.Vehicles.Length)];
    }

    public long Total { get; private set; } = long.MaxValue;

    private int _missing = int.MaxValue;
    private long _cost = long.MaxValue;

    /// <summary>Whether the state carries no overload and leaves out fewer requests that must be served, or as many at less cost.</summary>
    public bool IsWorseThan(RoutingState state) =>
        state.Overload == 0 && (state.Missing < _missing || (state.Missing == _missing && state.Cost < _cost));

    public void Keep(RoutingState state)
    {
        Total = state.Total;
        _missing = state.Missing;
        _cost = state.Cost;
        _length = 0;
        for (int day = 0; day < _model.Days; day++)
            for (int i = 0; i < state.Used.CountOf(day); i++)
            {
                RouteHead route = state.Routes[state.Used.Of(day)[i]];
                _cells[_length++] = -1 - route.Kind;
                for (int v = state.Links[route.First].Next; v != route.Last; v = state.Links[v].Next) _cells[_length++] = v;
            }
    }

    /// <summary>The routes as the caller sees them.</summary>
    public RoutingPlan Plan()
    {
        var routes = ImmutableArray.CreateBuilder<PlannedRoute>();
        var served = new bool[_model.Requests];
        for (int at = 0; at < _length;)
        {
            int kind = -1 - _cells[at++];
            var requests = ImmutableArray.CreateBuilder<int>();
            for (; at < _length && _cells[at] >= 0; at++)
            {
                requests.Add(_model.Of[_cells[at]].Request);
                served[_model.Of[_cells[at]].Request] = true;
            }

            routes.Add(new PlannedRoute(kind, requests.ToImmutable()));
        }

        ImmutableArray<int> leftOut = [.. Enumerable.Range(0, served.Length).Where(request => !served[request])];
        int[] missing = [.. leftOut.Where(request => _model.Problem.Requests[request].PriceOfLeavingOut is null)];
        return new RoutingPlan(routes.ToImmutable(), leftOut, Total - missing.Sum(request => _model.LeavingOut[request]), missing.Length);
    }
}
