using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>The periodic and the multi-depot problem with time windows of Cordeau, Laporte and Mercier (2001). A group is a day or a depot.</summary>
internal sealed record CordeauInstance(
    string Name,
    bool Periodic,
    int Vehicles,
    IReadOnlyList<(double Duration, double Capacity)> Limits,
    IReadOnlyList<CordeauNode> Customers,
    IReadOnlyList<PlaneNode> Depots,
    Distance Distance) : Instance(Name, "cordeau")
{
    public override IReadOnlyList<string> Conventions => Periodic
        ? ["pvrptw-distance (literature)", "pvrptw-distance (own run)"]
        : ["mdvrptw-distance (literature)", "mdvrptw-distance (own run)"];

    public override string Class => Periodic ? "periodic" : "several depots";

    public int Groups => Limits.Count;

    public RoutingProblem Problem()
    {
        var unit = new Unit(Distance);
        List<PlaneNode> places = [.. Depots, .. Customers.Select(customer => customer.Plane)];
        (int[] cost, int[] time) = unit.Matrices(places);
        return new RoutingProblem(
            places.Count,
            cost,
            time,
            [.. Customers.Select((customer, i) => Request(customer, i, unit))],
            [.. Enumerable.Range(0, Groups).Select(group => Kind(group, unit))]);
    }

    public override Solved Solve(Wanted wanted)
    {
        (RoutingPlan plan, long iterations) = Searching.Run(Problem(), wanted);
        return Judged(plan, iterations);
    }

    public override Func<Wanted, Solved>? Peer => Periodic ? null : wanted => Judged(RoutingPeer.Run(Problem(), wanted), 0);

    private Solved Judged(RoutingPlan plan, long iterations)
    {
        List<(int Group, int[] Stops)> routes = [.. plan.Routes.Select(route => (route.Kind, route.Requests.ToArray())).OrderBy(route => route.Kind)];
        return new Solved(
            CordeauCheck.Judge(this, routes),
            [.. routes.Select(route => new NamedRoute($"{(Periodic ? "day" : "depot")} {route.Group + 1}", [.. route.Stops.Select(Number)]))],
            [.. plan.LeftOut.Select(Number)],
            iterations);
    }

    private string Number(int customer) => Customers[customer].Number.ToString(CultureInfo.InvariantCulture);

    private RoutingRequest Request(CordeauNode customer, int index, Unit unit)
    {
        PlaneNode plane = customer.Plane;
        var request = new RoutingRequest(Groups + index, (int)plane.Demand, unit.Of(plane.Service), unit.Of(plane.Opens), unit.Of(plane.Closes));
        if (Periodic) return request with { DayPatterns = [.. customer.Patterns] };
        ImmutableArray<int> depots = [.. Enumerable.Range(0, Groups).Where(depot => customer.Patterns.Any(pattern => (pattern >> depot & 1) != 0))];
        return depots.Length == Groups ? request : request with { EligibleKinds = depots };
    }

    // A limit of 0 means none.
    private VehicleKind Kind(int group, Unit unit)
    {
        (double duration, double capacity) = Limits[group];
        PlaneNode home = Depots[group];
        bool bounds = duration > 0 && duration < home.Closes - home.Opens;
        return new VehicleKind(Periodic ? group : 0, group, group, Vehicles, capacity > 0 ? (int)capacity : int.MaxValue, unit.Of(home.Opens), unit.Of(home.Closes))
        {
            LongestDuration = bounds ? (int)Math.Floor(duration * unit.PerOne) : null,
        };
    }
}
