using Google.OrTools.ConstraintSolver;
using Google.Protobuf.WellKnownTypes;
using HomeLine.Planning.Routing;
using PeerModel = Google.OrTools.ConstraintSolver.RoutingModel;

namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// OR-Tools routing on a one-day problem, with its usual settings: parallel cheapest insertion, then guided local search. It stops by the same processor clock as
/// our search; its own time limit is on the wall and only a safety.
/// </summary>
internal static class RoutingPeer
{
    /// <summary>Twenty times the seconds on the wall, in case the machine is busy.</summary>
    private const int WallFactor = 20;

    public static RoutingPlan Run(RoutingProblem problem, Wanted wanted)
    {
        TimeBudget budget = wanted.OfThisThread();
        int[] kinds = [.. problem.Kinds.SelectMany((kind, k) => Enumerable.Repeat(k, Math.Min(kind.Count, problem.Requests.Length)))];
        int homes = problem.Kinds.Max(kind => Math.Max(kind.Start, kind.End)) + 1;
        using var manager = new RoutingIndexManager(homes + problem.Requests.Length, kinds.Length, [.. kinds.Select(k => problem.Kinds[k].Start)], [.. kinds.Select(k => problem.Kinds[k].End)]);
        using var routing = new PeerModel(manager);
        int Place(int node) => node < homes ? node : problem.Requests[node - homes].Place;
        long[][] Matrix(int[] from, bool service) => [.. Enumerable.Range(0, homes + problem.Requests.Length).Select(a => Enumerable.Range(0, homes + problem.Requests.Length)
            .Select(b => (long)from[(Place(a) * problem.Places) + Place(b)] + (service && a >= homes ? problem.Requests[a - homes].Service : 0)).ToArray())];
        routing.SetArcCostEvaluatorOfAllVehicles(routing.RegisterTransitMatrix(Matrix(problem.Cost, service: false)));
        long horizon = problem.Kinds.Max(kind => (long)kind.Closes);
        routing.AddDimension(routing.RegisterTransitMatrix(Matrix(problem.Time, service: true)), horizon, horizon, false, "time");
        int demand = routing.RegisterUnaryTransitVector([.. Enumerable.Range(0, homes + problem.Requests.Length).Select(node => node < homes ? 0L : problem.Requests[node - homes].Demand)]);
        routing.AddDimensionWithVehicleCapacity(demand, 0, [.. kinds.Select(k => (long)problem.Kinds[k].Capacity)], true, "load");
        Restrict(problem, routing, manager, kinds, homes);
        RoutingSearchParameters settings = operations_research_constraint_solver.DefaultRoutingSearchParameters();
        settings.FirstSolutionStrategy = FirstSolutionStrategy.Types.Value.ParallelCheapestInsertion;
        settings.LocalSearchMetaheuristic = LocalSearchMetaheuristic.Types.Value.GuidedLocalSearch;
        settings.TimeLimit = Duration.FromTimeSpan(TimeSpan.FromSeconds(wanted.Seconds * WallFactor));
        routing.AddSearchMonitor(routing.solver().MakeCustomLimit(() => budget.Used(0) >= 1));
        using Assignment? found = routing.SolveWithParameters(settings);
        return Plan(problem, routing, manager, kinds, homes, found);
    }

    private static void Restrict(RoutingProblem problem, PeerModel routing, RoutingIndexManager manager, int[] kinds, int homes)
    {
        RoutingDimension time = routing.GetMutableDimension("time");
        for (int r = 0; r < problem.Requests.Length; r++)
        {
            RoutingRequest request = problem.Requests[r];
            long index = manager.NodeToIndex(homes + r);
            time.CumulVar(index).SetRange(request.Opens, request.Closes);
            if (!request.EligibleKinds.IsDefault)
                routing.VehicleVar(index).SetValues([-1, .. Enumerable.Range(0, kinds.Length).Where(v => request.EligibleKinds.Contains(kinds[v])).Select(v => (long)v)]);
            if (request.PriceOfLeavingOut is { } price) routing.AddDisjunction([index], price);
        }

        for (int v = 0; v < kinds.Length; v++)
        {
            VehicleKind kind = problem.Kinds[kinds[v]];
            time.CumulVar(routing.Start(v)).SetRange(kind.Opens, kind.Closes);
            time.CumulVar(routing.End(v)).SetRange(kind.Opens, kind.Closes);
            if (kind.LongestDuration is { } longest) time.SetSpanUpperBoundForVehicle(longest, v);
        }
    }

    private static RoutingPlan Plan(RoutingProblem problem, PeerModel routing, RoutingIndexManager manager, int[] kinds, int homes, Assignment? found)
    {
        var routes = new List<PlannedRoute>();
        for (int v = 0; v < kinds.Length && found is not null; v++)
        {
            var stops = new List<int>();
            for (long at = found.Value(routing.NextVar(routing.Start(v))); !routing.IsEnd(at); at = found.Value(routing.NextVar(at))) stops.Add(manager.IndexToNode(at) - homes);
            if (stops.Count > 0) routes.Add(new PlannedRoute(kinds[v], [.. stops]));
        }

        int[] leftOut = [.. Enumerable.Range(0, problem.Requests.Length).Except(routes.SelectMany(route => route.Requests))];
        return new RoutingPlan([.. routes], [.. leftOut], 0, leftOut.Length);
    }
}
