using System.Globalization;
using HomeLine.Planning.Routing.Supplies;

namespace HomeLine.Benchmarks.Classic.Supplies;

/// <summary>A day with skills, tools and parts, ready to be solved; the search decides who passes by the depot and when.</summary>
internal sealed record SupplyInstance(SupplyDay Day) : Instance(Day.Name, "supplies")
{
    public override IReadOnlyList<string> Conventions => ["trsp-duration"];

    public override string Class => Name[..Math.Min(Name.Length, Name.StartsWith("RC", StringComparison.Ordinal) ? 3 : 2)];

    public override Solved Solve(Wanted wanted)
    {
        SupplyProblem problem = Problem();
        (SupplyPlan plan, long iterations) = new Islands<SupplyPlan>(wanted).Best(
            (seed, budget) =>
            {
                var search = new SupplySearch(problem, seed);
                search = new SupplySearch(problem, seed)
                {
                    FirstTemperature = wanted.Tuning.First ?? search.FirstTemperature,
                    LastTemperature = wanted.Tuning.Last ?? search.LastTemperature,
                };
                return (search.Run(budget), search.Iterations);
            },
            plan => plan.Duration + (plan.LeftOut.Length * 1_000_000_000_000L));
        List<(int Person, int[] Nodes)> routes = [.. plan.Rounds.Select(round => (round.Person + 1, round.Stops.Select(stop => stop == SupplyPlan.Pass ? 0 : stop + Day.People + 1).ToArray()))];
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

    // Places are the nodes of the file. Travel is rounded up, so that what fits here fits in double precision too.
    private SupplyProblem Problem()
    {
        var unit = new Unit(Distance.Exact);
        int nodes = Day.Nodes.Count;
        var travel = new int[nodes * nodes];
        for (int a = 0; a < nodes; a++)
            for (int b = 0; b < nodes; b++)
                travel[(a * nodes) + b] = (int)Math.Ceiling((Day.Leg(a, b) * unit.PerOne) - 1e-6);
        PlaneNode depot = Day.Nodes[0].Plane;
        return new SupplyProblem(
            nodes,
            travel,
            new SupplyDepot(0, unit.Of(depot.Opens), unit.Of(depot.Closes)),
            [.. Enumerable.Range(1, Day.People).Select(person => Person(person, unit))],
            [.. Enumerable.Range(Day.People + 1, nodes - Day.People - 1).Select(node => Request(node, unit))]);
    }

    private SupplyPerson Person(int person, Unit unit)
    {
        SupplyNode node = Day.Nodes[person];
        return new SupplyPerson(person, unit.Of(node.Plane.Opens), unit.Of(node.Plane.Closes), Bits(node.Tools), [.. node.Parts]);
    }

    private SupplyRequest Request(int request, Unit unit)
    {
        SupplyNode node = Day.Nodes[request];
        int[] able = [.. Enumerable.Range(0, Day.People).Where(person => Day.Can(person + 1, request))];
        return new SupplyRequest(request, unit.Of(node.Plane.Service), unit.Of(node.Plane.Opens), unit.Of(node.Plane.Closes), [.. able], Bits(node.Tools), [.. node.Parts]);
    }

    private ulong Bits(int[] tools) => tools.Aggregate(0UL, (bits, tool) => tool is >= 0 and < 64 ? bits | (1UL << tool) : throw new UnreadableFileException($"{Name}: tool {tool} is outside 0 to 63"));
}
