using System.CommandLine;
using System.Globalization;
using HomeLine.Planning;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>
/// Random weeks small enough to prove: is the plan the best there is? Where that is not proven, longer searches from other seeds look for a better plan, and that one is
/// bounded: a plan that falls short of a proven optimum shows as a miss, not as a loose bound.
/// </summary>
internal static class ProofCommand
{
    public static Command Create()
    {
        Option<int> weeks = Asked.Number("--weeks", "How many weeks.", 200, least: 1);
        Option<int> first = Asked.Number("--first-seed", "Seed of the first week.", 1);
        Option<int> patients = Asked.Number("--patients", "Most patients.", 20, least: 4);
        Option<int> rounds = Asked.Number("--rounds", "Rounds of the search that is judged.", 100_000);
        Option<int> longer = Asked.Number("--longer", "Rounds of each of the three longer searches; 0 for none.", 200_000);
        Option<int> labels = Asked.Number("--labels", "Most partial nurse-days kept at once.", 2_000_000, least: 1);
        Option<double> effort = Asked.Amount("--effort", "Deterministic time of the exact choice for each tier.", 10);
        var command = new Command("proof", "Random small weeks: planner against proven optimum.") { weeks, first, patients, rounds, longer, labels, effort };
        command.SetAction(parsed =>
        {
            Console.WriteLine("seed,nurses,patients,tasks,score,best,proven,equal,open_tier,open_planned,open_bound,gap_percent,plan_cpu_s,proof_cpu_s,pricing_rounds,columns");
            var rows = new List<ProofRow>();
            var options = new BoundOptions(Labels: parsed.GetValue(labels), Effort: parsed.GetValue(effort));
            for (int i = 0; i < parsed.GetValue(weeks); i++)
            {
                int seed = parsed.GetValue(first) + i, most = parsed.GetValue(patients);
                int people = 4 + (seed * 7 % (most - 3)), nurses = 2 + (people / 6);
                rows.Add(ProofRow.Of(InventedWeek.Of(nurses, people, seed), seed, parsed.GetValue(rounds), parsed.GetValue(longer), options));
                Console.WriteLine(rows[^1]);
            }

            int proven = rows.Count(r => r.Bound.Optimal), equal = rows.Count(r => r.Bound.Optimal && r.Equal);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"# weeks {rows.Count}, proven {proven}, equal {equal} ({100.0 * equal / Math.Max(1, proven):F1} % of those proven), worst open gap {rows.Max(r => r.Bound.Open?.GapPercent ?? 0):F2} %"));
        });
        return command;
    }

    /// <summary>One week.</summary>
    private sealed record ProofRow(WeekProblem Week, int Seed, PlanScore Score, PlanScore Best, WeekBound Bound, double PlanSeconds, double BoundSeconds)
    {
        public bool Equal => Score == Best;

        public static ProofRow Of(WeekProblem week, int seed, int rounds, int longer, BoundOptions options)
        {
            double began = CpuClock.ThreadSeconds();
            WeekPlan plan = Planner.Plan(week, new PlanOptions(1, rounds)), best = plan;
            double planned = CpuClock.ThreadSeconds();
            WeekBound bound = Planner.Bound(week, plan, options);
            for (ulong other = 2; other <= 4 && longer > 0 && !bound.Optimal; other++)
            {
                WeekPlan found = Planner.Plan(week, new PlanOptions(other, longer));
                if (found.Score < best.Score) best = found;
            }

            if (best.Score < plan.Score) bound = Planner.Bound(week, best, options);
            return new ProofRow(week, seed, plan.Score, best.Score, bound, planned - began, CpuClock.ThreadSeconds() - planned);
        }

        public override string ToString() => string.Create(CultureInfo.InvariantCulture,
            $"{Seed},{Week.Nurses.Length},{Week.Patients.Length},{Week.Tasks.Length},{Say(Score)},{Say(Best)},{Bound.Optimal},{Equal},{Bound.Open?.Tier},{Bound.Open?.Planned},{Bound.Open?.AtLeast},{Bound.Open?.GapPercent ?? 0:F2},{PlanSeconds:F2},{BoundSeconds:F2},{Bound.Rounds},{Bound.Columns}");

        private static string Say(PlanScore s) => $"{s.Critical}/{s.Risk}/{s.Duties}/{s.Work}/{s.People}/{s.UnusedLife}";
    }
}
