using System.Collections.Immutable;
using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic.Revealed;

/// <summary>
/// Lives through a day: whenever requests arrive, what the vehicles have set out for stays as it is and the rest is planned anew, with nothing known but what has
/// arrived. A vehicle sets out as late as its plan allows without starting the next service later, and waits where it is.
/// </summary>
internal sealed class RevealedReplay
{
    /// <summary>Own value: a request is left out only where nobody can make it; in units of the file.</summary>
    private const int PriceOfLeavingOut = 10_000;

    private readonly RevealedDay _day;
    private readonly Unit _unit;
    private readonly int[] _cost, _time;
    private readonly List<RevealedVehicle> _out = [];
    private readonly HashSet<int> _open = [];

    public RevealedReplay(RevealedDay day)
    {
        _day = day;
        _unit = new Unit(day.Distance);
        (_cost, _time) = _unit.Matrices(day.Nodes);
        Moments = [.. day.Known.Skip(1).Select(known => Math.Max(0, _unit.Of(known))).Append(0).Distinct().Order()];
    }

    /// <summary>When something becomes known, beginning with the start of the day.</summary>
    public ImmutableArray<int> Moments { get; }

    /// <summary>Iterations of all searches.</summary>
    public long Iterations { get; private set; }

    /// <summary>Lives through the day; afterwards requests that are in no route were refused.</summary>
    /// <param name="budget">How long each planning may take, by its place among the moments.</param>
    /// <param name="options">How to search.</param>
    public IReadOnlyList<DrivenRoute> Live(Func<int, ISearchBudget> budget, RoutingOptions options)
    {
        List<(RevealedVehicle? Vehicle, List<int> Ahead)> ahead = [];
        for (int i = 0; i < Moments.Length; i++)
        {
            int now = Moments[i], until = i + 1 < Moments.Length ? Moments[i + 1] : int.MaxValue;
            for (int node = 1; node < _day.Nodes.Count; node++)
                if (Math.Max(0, _unit.Of(_day.Known[node])) == now)
                    _open.Add(node);
            _open.RemoveWhere(node => _unit.Of(_day.Nodes[node].Closes) < now);
            ahead = Plan(now, ahead, budget(i), options with { Seed = options.Seed + (ulong)i });
            SetOut(ahead, now, until);
        }

        return [.. _out.Select(vehicle => new DrivenRoute([.. vehicle.Stops.Select(stop => (stop.Node, (double)stop.Left / _unit.PerOne))]))];
    }

    private List<(RevealedVehicle? Vehicle, List<int> Ahead)> Plan(int now, List<(RevealedVehicle? Vehicle, List<int> Ahead)> before, ISearchBudget budget, RoutingOptions options)
    {
        int[] open = [.. _open.Order()];
        var index = open.Select((node, i) => (node, i)).ToDictionary(pair => pair.node, pair => pair.i);
        PlaneNode home = _day.Nodes[0];
        int closes = _unit.Of(home.Closes), fresh = _day.Vehicles - _out.Count;
        // Whoever is out must come home anyway: going on costs only what it adds to that.
        ImmutableArray<VehicleKind> kinds =
        [
            .. _out.Select(vehicle => new VehicleKind(0, vehicle.Node, 0, 1, _day.Capacity - vehicle.Load, Math.Max(now, vehicle.Free), closes) { FixedCost = -_cost[vehicle.Node * _day.Nodes.Count] }),
            new VehicleKind(0, 0, 0, fresh, _day.Capacity, Math.Max(now, _unit.Of(home.Opens)), closes),
        ];
        var problem = new RoutingProblem(
            _day.Nodes.Count,
            _cost,
            _time,
            [.. open.Select(node => Request(node))],
            kinds);
        var search = new RoutingSearch(problem, options);
        RoutingPlan plan = search.Run(budget, Earlier(before, index));
        Iterations += search.Iterations;
        return [.. plan.Routes.Select(route => (route.Kind < _out.Count ? _out[route.Kind] : null, route.Requests.Select(request => open[request]).ToList()))];
    }

    private RoutingRequest Request(int node)
    {
        PlaneNode plane = _day.Nodes[node];
        return new RoutingRequest(node, (int)plane.Demand, _unit.Of(plane.Service), _unit.Of(plane.Opens), _unit.Of(plane.Closes)) { PriceOfLeavingOut = _unit.Of(PriceOfLeavingOut) };
    }

    private RoutingPlan Earlier(List<(RevealedVehicle? Vehicle, List<int> Ahead)> before, Dictionary<int, int> index)
    {
        ImmutableArray<PlannedRoute> routes = [.. before
            .Select(route => new PlannedRoute(route.Vehicle is null ? _out.Count : _out.IndexOf(route.Vehicle), [.. route.Ahead.Where(index.ContainsKey).Select(node => index[node])]))
            .Where(route => route.Requests.Length > 0)];
        return new RoutingPlan(routes, [], 0, 0);
    }

    /// <summary>Everybody sets out for what must be left for before the next moment.</summary>
    private void SetOut(List<(RevealedVehicle? Vehicle, List<int> Ahead)> ahead, int now, int until)
    {
        for (int i = 0; i < ahead.Count; i++)
        {
            (RevealedVehicle? vehicle, List<int> next) = ahead[i];
            vehicle ??= new RevealedVehicle { Free = Math.Max(now, _unit.Of(_day.Nodes[0].Opens)) };
            vehicle.Free = Math.Max(vehicle.Free, now);
            while (next.Count > 0)
            {
                PlaneNode plane = _day.Nodes[next[0]];
                int leg = _time[(vehicle.Node * _day.Nodes.Count) + next[0]], leave = Math.Max(vehicle.Free, _unit.Of(plane.Opens) - leg);
                if (leave >= until) break;
                if (vehicle.Stops.Count == 0) _out.Add(vehicle);
                vehicle.Stops.Add((next[0], leave));
                vehicle.Free = Math.Max(leave + leg, _unit.Of(plane.Opens)) + _unit.Of(plane.Service);
                vehicle.Load += (int)plane.Demand;
                vehicle.Node = next[0];
                _open.Remove(next[0]);
                next.RemoveAt(0);
            }

            ahead[i] = (vehicle.Stops.Count == 0 ? null : vehicle, next);
        }
    }
}

/// <summary>A vehicle that has set out: where it is or is going, when it is free there, what it has taken.</summary>
internal sealed class RevealedVehicle
{
    public List<(int Node, int Left)> Stops { get; } = [];
    public int Node { get; set; }
    public int Free { get; set; }
    public int Load { get; set; }
}
