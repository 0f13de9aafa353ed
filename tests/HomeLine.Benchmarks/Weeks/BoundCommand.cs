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
        var sizes = new Option<string>("--sizes") { Description = "Nurses x patients, with commas; demo for the demonstration week.", DefaultValueFactory = _ => "demo,5x30,20x200" };
        var seeds = new Option<int>("--seeds") { Description = "How many weeks of each size.", DefaultValueFactory = _ => 1 };
        var rounds = new Option<int>("--rounds") { Description = "Rounds of the search.", DefaultValueFactory = _ => 60_000 };
        var pricing = new Option<int>("--pricing") { Description = "Most rounds of pricing a tier.", DefaultValueFactory = _ => 300 };
        var labels = new Option<int>("--labels") { Description = "Most partial nurse-days kept at once.", DefaultValueFactory = _ => 2_000_000 };
        var near = new Option<int>("--near") { Description = "Near patients remembered.", DefaultValueFactory = _ => 12 };
        var columns = new Option<int>("--columns") { Description = "Most nurse-days for the exact choice; 0 for none.", DefaultValueFactory = _ => 100_000 };
        var effort = new Option<double>("--effort") { Description = "Deterministic time of the exact choice for each tier.", DefaultValueFactory = _ => 10 };
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
        if (size == "demo") return DemoWeek.Problem;
        int[] parts = [.. size.Split('x').Select(p => int.Parse(p, CultureInfo.InvariantCulture))];
        return InventedWeek.Of(parts[0], parts[1], seed);
    }
}
