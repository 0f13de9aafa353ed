using System.Globalization;
using HomeLine.Planning.Routing.Unloading;

namespace HomeLine.Benchmarks.Classic.Unloading;

/// <summary>A week of rounds that unload on the way, ready to be solved.</summary>
internal sealed record UnloadingInstance(UnloadingWeek Week) : Instance(Week.Name, "unloading")
{
    public override IReadOnlyList<string> Conventions => ["pvrp-if"];

    public override string Class => $"{Week.Days} days";

    public override Solved Solve(Wanted wanted)
    {
        UnloadingProblem problem = Problem();
        try
        {
            (UnloadingPlan plan, long iterations) = new Islands<UnloadingPlan>(wanted).Best(
                (seed, budget) =>
                {
                    var search = new UnloadingSearch(problem, seed);
                    search = new UnloadingSearch(problem, seed)
                    {
                        FirstTemperature = wanted.Tuning.First ?? search.FirstTemperature,
                        LastTemperature = wanted.Tuning.Last ?? search.LastTemperature,
                    };
                    return (search.Run(budget), search.Iterations);
                },
                plan => plan.Cost + (plan.Excess * 1_000_000));
            List<(int Day, int[] Nodes)> rounds = [.. plan.Rounds.Select(round => (round.Day, round.Places.ToArray()))];
            return new Solved(
                UnloadingCheck.Judge(Week, rounds),
                [.. rounds.Select(round => new NamedRoute($"day {round.Day}", [.. round.Nodes.Select(node => node.ToString(CultureInfo.InvariantCulture))]))],
                [],
                iterations);
        }
        catch (ArgumentException fault)
        {
            throw new UnreadableFileException($"{Name}: {fault.Message}", fault);
        }
    }

    public override Verdict? Published(string path)
    {
        string solution = Path.ChangeExtension(path, ".sol.txt");
        return File.Exists(solution) ? UnloadingCheck.Judge(Week, UnloadingFile.Solution(AnyFile.Text(solution))) : null;
    }

    private UnloadingProblem Problem() => new(
        Week.Nodes.Count,
        [.. Week.Minutes.SelectMany(row => row)],
        [.. Enumerable.Range(0, Week.Nodes.Count).Where(node => Week.Nodes[node].Unloads)],
        [.. Enumerable.Range(0, Week.Nodes.Count).Where(node => Week.Nodes[node].Frequency > 0).Select(node => Customer(node))],
        Week.Days,
        Week.Vehicles,
        Week.Capacity,
        Week.LongestDuration);

    private UnloadingCustomer Customer(int node) => new(node, Week.Nodes[node].Demand, Week.Nodes[node].Service, [.. Week.Schemes(Week.Nodes[node].Frequency)]);
}
