using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>Planning stopped at random moments, from looking the problem up to the exact choice at the end: how long until the plan so far is there.</summary>
internal static class CancelCommand
{
    public static Command Create()
    {
        Option<string> size = Asked.Size("--size", "60x700");
        Option<int> cancels = Asked.Number("--cancels", "How often it is stopped.", 50, least: 1);
        Option<int> rounds = Asked.Number("--rounds", "Rounds of the search; from 5,000 on the exact choice is part of it.", 5_000, least: 1);
        Option<int> seed = Asked.Number("--seed", "Seed of the week and of the moments.", 1);
        var each = new Option<bool>("--each") { Description = "One row for each cancel." };
        var command = new Command("cancel", "From stopping a search to its plan: milliseconds.") { size, cancels, rounds, seed, each };
        command.SetAction(parsed =>
        {
            WeekSize asked = Asked.SizesOf(parsed.GetValue(size)!)[0];
            WeekProblem week = InventedWeek.Of(asked.Nurses, asked.Patients, parsed.GetValue(seed));
            var options = new PlanOptions((ulong)parsed.GetValue(seed), parsed.GetValue(rounds));
            Planner.Plan(week, options with { Iterations = 500 });
            var whole = Stopwatch.StartNew();
            Planner.Plan(week, options);
            double seconds = whole.Elapsed.TotalSeconds;
            var draw = new Draw(parsed.GetValue(seed));
            Stopped[] stops = [.. Enumerable.Range(0, parsed.GetValue(cancels)).Select(_ => Stop(week, options, draw.Fraction() * seconds))];
            if (parsed.GetValue(each))
            {
                Console.WriteLine("stopped_after_s,rounds_done,unmet,wall_ms,cpu_ms,accepted");
                foreach (Stopped stop in stops) Console.WriteLine(stop);
            }

            Console.WriteLine("what,nurses,patients,cancels,accepted,mean_ms,p50_ms,p95_ms,p99_ms,worst_ms");
            string head = $"{week.Nurses.Length},{week.Patients.Length},{stops.Length},{stops.Count(s => s.Accepted)}";
            Console.WriteLine(Percentiles.Row($"wall,{head}", [.. stops.Select(s => s.WallMilliseconds)]));
            Console.WriteLine(Percentiles.Row($"cpu,{head}", [.. stops.Select(s => s.CpuMilliseconds)]));
        });
        return command;
    }

    private static Stopped Stop(WeekProblem week, PlanOptions options, double after)
    {
        using var stop = new CancellationTokenSource();
        double cpu = 0;
        long at = 0;
        stop.Token.Register(() => (at, cpu) = (Stopwatch.GetTimestamp(), CpuClock.ProcessSeconds()));
        int done = 0;
        stop.CancelAfter(TimeSpan.FromSeconds(after));
        WeekPlan plan = Planner.Plan(week, options, new Told(p => done = p.Iteration), stop.Token);
        (long now, double used) = (Stopwatch.GetTimestamp(), CpuClock.ProcessSeconds());
        // It may have been done before the moment came.
        bool came = Volatile.Read(ref at) != 0;
        return new Stopped(after, done, plan.Unmet.Length, came ? (now - at) * 1_000.0 / Stopwatch.Frequency : 0, came ? (used - cpu) * 1_000 : 0, Checker.Check(week, plan).Accepted);
    }

    private sealed record Stopped(double After, int Rounds, int Unmet, double WallMilliseconds, double CpuMilliseconds, bool Accepted)
    {
        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{After:F2},{Rounds},{Unmet},{WallMilliseconds:F1},{CpuMilliseconds:F1},{Accepted}");
    }

    private sealed class Told(Action<PlanProgress> tell) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => tell(value);
    }
}
