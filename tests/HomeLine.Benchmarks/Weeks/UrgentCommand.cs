using System.CommandLine;
using HomeLine.Planning;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>How long one urgent need takes on the published plan of an invented week: seeded events, compute time only.</summary>
internal static class UrgentCommand
{
    public static Command Create()
    {
        Option<string> size = Asked.Size("--size", "60x700");
        Option<int> events = Asked.Number("--events", "How many urgent needs; 0 for none.", 1_000);
        Option<int> rounds = Asked.Number("--rounds", "Rounds for the plan they come up in.", 20_000);
        Option<int> seed = Asked.Number("--seed", "Seed.", 1);
        Option<int> mends = Asked.Number("--mends", "How many broken days; 0 for none.", 1_000);
        var command = new Command("urgent", "Urgent needs on a published week: milliseconds of compute, 50th, 95th and 99th of a hundred.") { size, events, mends, rounds, seed };
        command.SetAction(parsed =>
        {
            WeekSize asked = Asked.SizesOf(parsed.GetValue(size)!)[0];
            WeekProblem week = PublishedWeek.Of(InventedWeek.Of(asked.Nurses, asked.Patients, parsed.GetValue(seed)), parsed.GetValue(rounds), now: InventedWeek.At(1, 7, 50));
            Console.WriteLine("what,nurses,patients,events,answered,mean_ms,p50_ms,p95_ms,p99_ms,worst_ms");
            if (parsed.GetValue(events) > 0) Console.WriteLine(Options(week, parsed.GetValue(events), parsed.GetValue(seed)));
            if (parsed.GetValue(mends) > 0) Console.WriteLine(Mends(week, parsed.GetValue(mends), parsed.GetValue(seed)));
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
            double began = CpuClock.ThreadSeconds();
            UrgentAnswers answers = ready.Options(need.Need, need.Tasks);
            times.Add((CpuClock.ThreadSeconds() - began) * 1_000);
            if (!answers.Answers.IsEmpty) answered++;
        }

        return Percentiles.Row($"options,{week.Nurses.Length},{week.Patients.Length},{events},{answered}", times);
    }

    /// <summary>A nurse out for the day or from an hour on, or a visit that overruns, drawn anew each time.</summary>
    private static string Mends(WeekProblem week, int events, int seed)
    {
        var draw = new Draw(seed + 1);
        PlannedVisit[] today = [.. week.Published!.Visits.Where(v => v.Start / 1440 == 1 && v.Promise == PromiseState.Told)];
        if (today.Length == 0) return "# no visit is left on Tuesday that could break";
        var times = new List<double>();
        int whole = 0;
        for (int i = 0; i < events; i++)
        {
            Trouble trouble = TroubleOf(week, today, draw);
            double began = CpuClock.ThreadSeconds();
            MendedWeek mended = Planner.Mend(week, [trouble], new MendOptions((ulong)i));
            times.Add((CpuClock.ThreadSeconds() - began) * 1_000);
            if (mended.Plan.Unmet.Length == week.Published!.Unmet.Length) whole++;
            if (mended.Findings.FirstOrDefault(f => f.Reason.Code != ReasonCode.BreakMissing) is { } finding) throw new InvalidOperationException(finding.Reason.Sentence);
        }

        return Percentiles.Row($"mend,{week.Nurses.Length},{week.Patients.Length},{events},{whole}", times);
    }

    private static Trouble TroubleOf(WeekProblem week, PlannedVisit[] today, Draw draw)
    {
        PlannedVisit visit = today[draw.Below(today.Length)];
        if (draw.Percent(30)) return new Trouble.Overrun(visit.Id, 15 + draw.Below(75));
        return new Trouble.NurseOut(visit.Nurse, draw.Percent(50) ? week.Now : week.Now + draw.Below(360), 2 * 1440);
    }
}
