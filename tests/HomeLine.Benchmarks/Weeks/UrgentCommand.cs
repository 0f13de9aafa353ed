using System.CommandLine;
using System.Globalization;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>How long one urgent need takes on the published plan of an invented week: seeded events, compute time only.</summary>
internal static class UrgentCommand
{
    public static Command Create()
    {
        var size = new Option<string>("--size") { Description = "Nurses x patients.", DefaultValueFactory = _ => "60x700" };
        var events = new Option<int>("--events") { Description = "How many urgent needs.", DefaultValueFactory = _ => 1_000 };
        var rounds = new Option<int>("--rounds") { Description = "Rounds for the plan they come up in.", DefaultValueFactory = _ => 20_000 };
        var seed = new Option<int>("--seed") { Description = "Seed.", DefaultValueFactory = _ => 1 };
        var command = new Command("urgent", "Urgent needs on a published week: milliseconds of compute, 50th, 95th and 99th of a hundred.") { size, events, rounds, seed };
        command.SetAction(parsed =>
        {
            int[] parts = [.. parsed.GetValue(size)!.Split('x').Select(p => int.Parse(p, CultureInfo.InvariantCulture))];
            WeekProblem week = PublishedWeek.Of(InventedWeek.Of(parts[0], parts[1], parsed.GetValue(seed)), parsed.GetValue(rounds), now: InventedWeek.At(1, 7, 50));
            Console.WriteLine("what,nurses,patients,events,answered,mean_ms,p50_ms,p95_ms,p99_ms,worst_ms");
            Console.WriteLine(Options(week, parsed.GetValue(events), parsed.GetValue(seed)));
        });
        return command;
    }

    private static string Options(WeekProblem week, int events, int seed)
    {
        var draw = new Draw(seed);
        var ready = new ReadyWeek(week);
        UrgentEvent[] needs = [.. Enumerable.Range(0, events + 50).Select(i => UrgentEvent.Of(week, draw, i))];
        foreach (UrgentEvent need in needs.Take(50)) ready.Options(need.Need, need.Tasks);
        var times = new List<double>();
        int answered = 0;
        foreach (UrgentEvent need in needs.Skip(50))
        {
            double began = ComputeClock.Milliseconds();
            UrgentAnswers answers = ready.Options(need.Need, need.Tasks);
            times.Add(ComputeClock.Milliseconds() - began);
            if (!answers.Answers.IsEmpty) answered++;
        }

        return Percentiles.Row($"options,{week.Nurses.Length},{week.Patients.Length},{events},{answered}", times);
    }
}
