using System.Globalization;
using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic.Supplies;

/// <summary>
/// A day with tools and parts, ready to be solved in a stated part: while searching everybody passes by the depot first, so that only skills matter; afterwards each route
/// leaves the visit to the depot out, or makes it later, where that is allowed and shorter. A person who could do without is never chosen for that reason.
/// </summary>
internal sealed record SupplyInstance(SupplyDay Day) : Instance(Day.Name, "supplies")
{
    /// <summary>Own value: travel weighs a thousandth more than its time, so that near requests are known to be near.</summary>
    private const int CostShare = 1_000;

    public override IReadOnlyList<string> Conventions => ["trsp-duration"];

    public override string Class => Name[..Math.Min(Name.Length, Name.StartsWith("RC", StringComparison.Ordinal) ? 3 : 2)];

    public override Solved Solve(Wanted wanted)
    {
        (RoutingPlan plan, long iterations) = Searching.Run(Problem(), wanted);
        List<(int Person, int[] Nodes)> routes = [.. plan.Routes.Select(route => (Person: route.Kind + 1, Requests: route.Requests.Select(request => request + Day.People + 1).ToArray()))
            .Select(route => (route.Person, SupplyPass.Best(Day, route.Person, route.Requests)))
            .OrderBy(route => route.Person)];
        return new Solved(
            SupplyCheck.Judge(Day, routes),
            [.. routes.Select(route => new NamedRoute($"person {route.Person}", [.. route.Nodes.Select(node => node.ToString(CultureInfo.InvariantCulture))]))],
            [.. plan.LeftOut.Select(request => $"{request + Day.People + 1}")],
            iterations);
    }

    public override Verdict? Published(string path)
    {
        string solution = Path.ChangeExtension(path, ".sol.txt");
        return File.Exists(solution) ? SupplyCheck.Judge(Day, SupplyFile.Solution(Day, AnyFile.Text(solution))) : null;
    }

    // Places: the nodes of the file, then each person's home once more, as the place from which every way leads past the depot.
    private RoutingProblem Problem()
    {
        var unit = new Unit(Distance.Exact);
        int nodes = Day.Nodes.Count, places = nodes + Day.People;
        var time = new int[places * places];
        for (int a = 0; a < places; a++)
            for (int b = 0; b < places; b++)
            {
                double leg = a < nodes ? Day.Leg(a, b < nodes ? b : b - nodes + 1) : Day.Leg(a - nodes + 1, 0) + Day.Leg(0, b < nodes ? b : b - nodes + 1);
                time[(a * places) + b] = (int)Math.Ceiling((leg * unit.PerOne) - 1e-6);
            }

        return new RoutingProblem(
            places,
            [.. time.Select(leg => leg / CostShare)],
            time,
            [.. Enumerable.Range(Day.People + 1, nodes - Day.People - 1).Select(node => Request(node, unit))],
            [.. Enumerable.Range(1, Day.People).Select(person => Kind(person, nodes, unit))])
        {
            DurationIsCost = true,
        };
    }

    private RoutingRequest Request(int node, Unit unit)
    {
        PlaneNode plane = Day.Nodes[node].Plane;
        return new RoutingRequest(node, 0, unit.Of(plane.Service), unit.Of(plane.Opens), unit.Of(plane.Closes))
        {
            EligibleKinds = [.. Enumerable.Range(0, Day.People).Where(kind => Day.Can(kind + 1, node))],
        };
    }

    private VehicleKind Kind(int person, int nodes, Unit unit)
    {
        PlaneNode home = Day.Nodes[person].Plane;
        return new VehicleKind(0, nodes + person - 1, person, 1, int.MaxValue, unit.Of(home.Opens), unit.Of(home.Closes));
    }
}
