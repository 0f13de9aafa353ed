using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Reserve;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>Plans invented weeks of growing size: time to the first complete plan, score after so many rounds, memory.</summary>
internal static class WeeksCommand
{
    public static Command Create()
    {
        Option<string> sizes = Asked.Sizes("--sizes", "5x30,20x200,60x700,300x4000");
        Option<int> rounds = Asked.Number("--rounds", "Rounds of the search.", 20_000);
        Option<int> seeds = Asked.Number("--seeds", "How many seeds.", 1, least: 1);
        Option<double> seconds = Asked.Amount("--seconds", "Stop each search after so many seconds; 0 for never.", 0);
        var unmet = new Option<bool>("--unmet") { Description = "List the care left out, with its reasons." };
        Option<int> reserve = Asked.Number("--reserve", "Plans each week again with one free slot of 75 minutes for so many nurses; 0 for not.", 0);
        var command = new Command("weeks", "Whole invented weeks: first plan, score, speed, memory.") { sizes, rounds, seeds, seconds, unmet, reserve };
        command.SetAction(parsed =>
        {
            Console.WriteLine("nurses,patients,tasks,nurse-days,seed,first_s,first_cpu_s,first_score,rounds,search_s,search_cpu_s,rounds_per_cpu_s,score,visits,late,unmet,checked,managed_mb,peak_mb");
            foreach (WeekSize size in Asked.SizesOf(parsed.GetValue(sizes)!))
            {
                for (int seed = 1; seed <= parsed.GetValue(seeds); seed++)
                {
                    Console.WriteLine(Row(InventedWeek.Of(size.Nurses, size.Patients, seed), seed, parsed.GetValue(rounds), parsed.GetValue(seconds), parsed.GetValue(unmet)));
                    if (parsed.GetValue(reserve) is > 0 and var nurses) Console.WriteLine(WithReserve(InventedWeek.Of(size.Nurses, size.Patients, seed), seed, parsed.GetValue(rounds), new ReserveRules(nurses, 75)));
                }
            }
        });
        return command;
    }

    private static string Row(WeekProblem problem, int seed, int rounds, double seconds, bool unmet)
    {
        double cpu = Cpu();
        var clock = Stopwatch.StartNew();
        WeekPlan first = Planner.Plan(problem, new PlanOptions((ulong)seed, 0));
        (double firstSeconds, double firstCpu) = (clock.Elapsed.TotalSeconds, Cpu() - cpu);
        cpu = Cpu();
        clock.Restart();
        using var stop = new CancellationTokenSource();
        if (seconds > 0) stop.CancelAfter(TimeSpan.FromSeconds(seconds));
        int done = 0;
        var progress = new Last(p => done = p.Iteration);
        WeekPlan plan = Planner.Plan(problem, new PlanOptions((ulong)seed, rounds), progress, stop.Token);
        (double search, double searchCpu) = (clock.Elapsed.TotalSeconds, Cpu() - cpu);
        CheckReport report = Checker.Check(problem, plan);
        if (unmet) Console.Write(string.Concat(plan.Unmet.Select(u => $"# {u.Task}: {string.Join(' ', u.Reasons.Select(r => r.Sentence))} {string.Join(' ', u.Relaxations.Select(r => r.Sentence))}\n")));
        using Process self = Process.GetCurrentProcess();
        return string.Create(CultureInfo.InvariantCulture,
            $"{problem.Nurses.Length},{problem.Patients.Length},{problem.Tasks.Length},{problem.Nurses.Sum(n => n.Shifts.Length)},{seed},{firstSeconds:F2},{firstCpu:F2},{Say(first.Score)},{done},{search:F2},{searchCpu:F2},{done / Math.Max(0.01, searchCpu - firstCpu):F0},{Say(plan.Score)},{report.Figures.Visits},{report.Figures.LateTasks},{plan.Unmet.Length},{report.Accepted && report.Score == plan.Score},{GC.GetTotalMemory(false) >> 20},{self.PeakWorkingSet64 >> 20}");
    }

    private static string WithReserve(WeekProblem problem, int seed, int rounds, ReserveRules rules)
    {
        double cpu = Cpu();
        WeekPlan plain = Planner.Plan(problem, new PlanOptions((ulong)seed, rounds));
        double without = Cpu() - cpu;
        ReservedWeek week = Planner.PlanWithReserve(problem, new PlanOptions((ulong)seed, rounds), rules);
        CheckReport report = Checker.Check(problem, week.Plan);
        string days = string.Join(' ', DaySlots.Of(problem, plain.Visits, rules).Zip(week.Days, (a, b) => $"{a.Free}>{b.Free}/{b.Asked}"));
        return string.Create(CultureInfo.InvariantCulture,
            $"# with a reserve: {Say(plain.Score)} > {Say(week.Plan.Score)}, slots missing {week.MissingWithout} > {week.Missing}, free by day without > with / asked: {days}; cpu s {without:F1} and {Cpu() - cpu - without:F1}; checked {report.Accepted && report.Score == week.Plan.Score}");
    }

    private static double Cpu()
    {
        using Process self = Process.GetCurrentProcess();
        return self.TotalProcessorTime.TotalSeconds;
    }

    private static string Say(PlanScore s) => $"{s.Critical}/{s.Risk}/{s.Duties}/{s.Work}/{s.People}/{s.UnusedLife}";

    private sealed class Last(Action<PlanProgress> tell) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => tell(value);
    }
}
