using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>One day, one base, hard windows: the sets of Solomon (1987) and Gehring and Homberger (1999). Node 0 is the base.</summary>
internal sealed record VrptwInstance(string Name, int Vehicles, int Capacity, IReadOnlyList<PlaneNode> Nodes, Distance Distance) : Instance(Name, "solomon")
{
    public override IReadOnlyList<string> Conventions => [Distance == Distance.Tenths ? "dist-trunc1" : "dist-double"];

    /// <summary>The letters and the first digit, and the size where the name has one.</summary>
    public override string Class => Name.Split('_') is { Length: 3 } parts ? $"{parts[0]} {Nodes.Count - 1}" : Name[..Math.Min(Name.Length, Name.StartsWith("RC", StringComparison.Ordinal) ? 3 : 2)];

    public RoutingProblem Problem()
    {
        var unit = new Unit(Distance);
        (int[] cost, int[] time) = unit.Matrices(Nodes);
        PlaneNode home = Nodes[0];
        return new RoutingProblem(
            Nodes.Count,
            cost,
            time,
            [.. Nodes.Skip(1).Select((node, i) => new RoutingRequest(i + 1, (int)node.Demand, unit.Of(node.Service), unit.Of(node.Opens), unit.Of(node.Closes)))],
            [new VehicleKind(0, 0, 0, Vehicles, Capacity, unit.Of(home.Opens), unit.Of(home.Closes))]);
    }

    public override Solved Solve(Wanted wanted)
    {
        (RoutingPlan plan, long iterations) = Searching.Run(Problem(), wanted);
        return Judged(plan, iterations);
    }

    public override Func<Wanted, Solved>? Peer => wanted => Judged(RoutingPeer.Run(Problem(), wanted), 0);

    private Solved Judged(RoutingPlan plan, long iterations)
    {
        int[][] routes = [.. plan.Routes.Select(route => route.Requests.Select(request => request + 1).ToArray())];
        return new Solved(
            VrptwCheck.Judge(this, routes),
            [.. routes.Select((route, i) => new NamedRoute($"route {i + 1}", [.. route.Select(stop => stop.ToString(System.Globalization.CultureInfo.InvariantCulture))]))],
            [.. plan.LeftOut.Select(request => $"{request + 1}")],
            iterations);
    }
}
