using System.Collections.Immutable;
using System.Numerics;

namespace HomeLine.Planning.Routing;

/// <summary>What was found wrong with a plan, and what it costs.</summary>
/// <param name="Faults">Broken rules in words; empty when the plan is valid. A must-serve request left out is one.</param>
/// <param name="Cost">Cost of the routes plus prices of what is left out.</param>
public sealed record RoutingVerdict(ImmutableArray<string> Faults, long Cost);

/// <summary>
/// Judges a plan by driving every route, visit after visit. Shares no code with the search; the shortest duration comes from the forward time slack
/// (Savelsbergh, ORSA Journal on Computing 4, 1992) and not from segments.
/// </summary>
public static class RoutingCheck
{
    /// <summary>Drives all routes of a plan.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="plan">The plan; its own cost is not read.</param>
    public static RoutingVerdict Judge(RoutingProblem problem, RoutingPlan plan)
    {
        var faults = ImmutableArray.CreateBuilder<string>();
        var days = new int[problem.Requests.Length];
        long cost = 0;
        foreach (PlannedRoute route in plan.Routes)
        {
            cost += Drive(problem, route, faults);
            foreach (int request in route.Requests)
            {
                int day = 1 << problem.Kinds[route.Kind].Day;
                if ((days[request] & day) != 0) faults.Add($"request {request} is visited twice on one day");
                days[request] |= day;
            }
        }

        for (int k = 0; k < problem.Kinds.Length; k++)
            if (plan.Routes.Count(route => route.Kind == k) > problem.Kinds[k].Count)
                faults.Add($"kind {k} has more routes than vehicles");
        for (int r = 0; r < days.Length; r++) cost += Coverage(problem.Requests[r], r, days[r], faults);
        return new RoutingVerdict(faults.ToImmutable(), cost);
    }

    private static long Coverage(RoutingRequest request, int index, int days, ImmutableArray<string>.Builder faults)
    {
        if (days == 0 && request.PriceOfLeavingOut is { } price) return price;
        if (days == 0) faults.Add($"request {index} is left out");
        else if (!request.DayPatterns.Contains(days)) faults.Add($"request {index} is visited on {BitOperations.PopCount((uint)days)} days that are none of its patterns");
        return 0;
    }

    private static long Drive(RoutingProblem problem, PlannedRoute route, ImmutableArray<string>.Builder faults)
    {
        VehicleKind kind = problem.Kinds[route.Kind];
        int at = kind.Start;
        long clock = kind.Opens, waited = 0, slack = (long)kind.Closes - kind.Opens, cost = kind.FixedCost, load = 0;
        foreach (int index in route.Requests)
        {
            RoutingRequest request = problem.Requests[index];
            long arrive = clock + problem.Time[(at * problem.Places) + request.Place], start = Math.Max(arrive, request.Opens);
            cost += problem.Cost[(at * problem.Places) + request.Place];
            if (start > request.Closes) faults.Add($"request {index} is begun at {start}, after it closes at {request.Closes}");
            if (!request.EligibleKinds.IsDefault && !request.EligibleKinds.Contains(route.Kind)) faults.Add($"request {index} may not be served by kind {route.Kind}");
            waited += start - arrive;
            slack = Math.Min(slack, waited + request.Closes - start);
            clock = start + request.Service;
            load += request.Demand;
            at = request.Place;
        }

        clock += problem.Time[(at * problem.Places) + kind.End];
        cost += problem.Cost[(at * problem.Places) + kind.End];
        if (clock > kind.Closes) faults.Add($"a route of kind {route.Kind} ends at {clock}, after {kind.Closes}");
        if (load > kind.Capacity) faults.Add($"a route of kind {route.Kind} carries {load}, at most {kind.Capacity} allowed");
        slack = Math.Min(slack, waited + kind.Closes - clock);
        long duration = clock - kind.Opens - Math.Min(slack, waited);
        if (duration > kind.LongestDuration) faults.Add($"a route of kind {route.Kind} takes {duration}, at most {kind.LongestDuration} allowed");
        return problem.DurationIsCost ? cost + duration : cost;
    }
}
