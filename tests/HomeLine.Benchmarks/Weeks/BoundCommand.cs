using System.CommandLine;
using System.Globalization;
using HomeLine.Planning;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>How far planned weeks may be from the best there is, tier by tier.</summary>
internal static class BoundCommand
{
    public static Command Create()
    {
        Option<string> sizes = Asked.SizesOrDemo("--sizes", "demo,5x30,20x200");
        Option<int> seeds = Asked.Number("--seeds", "How many weeks of each size.", 1, least: 1);
        Option<int> rounds = Asked.Number("--rounds", "Rounds of the search.", 60_000);
        Option<int> pricing = Asked.Number("--pricing", "Most rounds of pricing a tier.", 300, least: 1);
        Option<int> labels = Asked.Number("--labels", "Most partial nurse-days kept at once.", 2_000_000, least: 1);
        Option<int> near = Asked.Number("--near", "Near patients remembered.", 12, least: 1);
        Option<int> columns = Asked.Number("--columns", "Most nurse-days for the exact choice; 0 for none.", 100_000);
        Option<double> effort = Asked.Amount("--effort", "Deterministic time of the exact choice for each tier.", 10);
        var command = new Command("bound", "Planned weeks beside what is proven about every plan.") { sizes, seeds, rounds, pricing, labels, near, columns, effort };
        command.SetAction(parsed =>
        {
            var options = new BoundOptions(parsed.GetValue(pricing), parsed.GetValue(labels), parsed.GetValue(columns), parsed.GetValue(near), parsed.GetValue(effort));
            Console.WriteLine("week,seed,tasks,tier,planned,at_least,gap_percent,closed,plan_cpu_s,bound_cpu_s,pricing_rounds,columns");
            foreach (string size in parsed.GetValue(sizes)!.Split(',', StringSplitOptions.RemoveEmptyEntries))
            {
                for (int seed = 1; seed <= parsed.GetValue(seeds); seed++) Measure(size, seed, parsed.GetValue(rounds), options);
            }
        });
        return command;
    }

    private static void Measure(string size, int seed, int rounds, BoundOptions options)
    {
        WeekProblem week = WeekOf(size, seed);
        double began = CpuClock.ThreadSeconds();
        WeekPlan plan = Planner.Plan(week, new PlanOptions((ulong)seed, rounds));
        double planned = CpuClock.ThreadSeconds();
        WeekBound bound = Planner.Bound(week, plan, options);
        double bounded = CpuClock.ThreadSeconds();
        foreach (TierBound tier in bound.Tiers)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{size},{seed},{week.Tasks.Length},{tier.Tier},{tier.Planned},{tier.AtLeast},{tier.GapPercent:F2},{tier.Closed},{planned - began:F2},{bounded - planned:F2},{bound.Rounds},{bound.Columns}"));
        }
    }

    private static WeekProblem WeekOf(string size, int seed)
    {
        if (size == Asked.Demo) return DemoWeek.Problem;
        WeekSize asked = Asked.SizesOf(size)[0];
        return InventedWeek.Of(asked.Nurses, asked.Patients, seed);
    }
}
