using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Mending;

/// <summary>Two hundred invented days of call-outs, overruns, lifting dressings and referrals on the demonstration week.</summary>
public sealed class TwoHundredDaysTests(ITestOutputHelper output)
{
    private const int Days = 200;

    private static readonly Lazy<Happened[]> All = new(() => [.. Enumerable.Range(1, Days).SelectMany(Day)]);

    [Fact]
    public void No_critical_care_is_silently_late()
    {
        foreach (Happened happened in All.Value)
        {
            var unmet = happened.After.Published!.Unmet.ToDictionary(u => u.Task, StringComparer.Ordinal);
            Dictionary<string, int> before = Starts(happened.Before.Published!), after = Starts(happened.After.Published!);
            foreach (CareTask task in happened.After.Tasks.Where(t => t.Critical))
            {
                if (after.TryGetValue(task.Id, out int start) && start < task.LateFrom) continue;
                bool wasSo = !before.TryGetValue(task.Id, out int then) || then >= task.LateFrom;
                if (after.ContainsKey(task.Id)) Assert.True(wasSo || happened.Told.Contains(task.Patient), $"{happened.Kind}: {task.Id} became late and nobody is told.");
                else Assert.NotEmpty(Assert.Contains(task.Id, unmet).Reasons);
            }
        }
    }

    [Fact]
    public void No_event_breaks_a_rule_that_is_not_named_and_nobody_who_is_out_is_sent()
    {
        foreach (Happened happened in All.Value)
        {
            // A break that an overrun has eaten is listed, not mended.
            Assert.Equal([], happened.Broken.Where(f => f.Reason.Code != ReasonCode.BreakMissing).Select(f => $"{happened.Kind}: {f.Reason.Sentence}"));
            if (happened.Trouble is not Trouble.NurseOut(var nurse, var from, var to)) continue;
            Assert.DoesNotContain(happened.After.Published!.Visits, v => (v.Nurse == nurse || v.Second == nurse) && v.Promise != PromiseState.Done && v.Start >= from && v.Start < to);
        }
    }

    [Fact]
    public void What_is_done_stays_done_and_no_care_is_lost()
    {
        foreach (Happened happened in All.Value)
        {
            Dictionary<string, int> after = Starts(happened.After.Published!);
            var unmet = happened.After.Published!.Unmet.Select(u => u.Task).ToHashSet(StringComparer.Ordinal);
            Assert.All(happened.After.Tasks, t => Assert.True(after.ContainsKey(t.Id) != unmet.Contains(t.Id), $"{happened.Kind}: {t.Id} is done and unmet, or neither."));
            Assert.All(happened.Before.Published!.Visits.Where(v => v.Promise == PromiseState.Done), v => Assert.Contains(happened.After.Published.Visits, w => (w.Id, w.Nurse, w.Start) == (v.Id, v.Nurse, v.Start)));
        }
    }

    [Fact]
    public void Most_events_disturb_little()
    {
        foreach (var kind in All.Value.GroupBy(h => h.Kind).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            int[] points = [.. kind.Where(h => h.Answered).Select(h => h.Disruption).Order()];
            output.WriteLine($"{kind.Key}: {kind.Count()} events, {points.Length} answered, disruption median {At(points, 0.5)}, 9 of 10 within {At(points, 0.9)}, most {points[^1]}; families told on average {kind.Average(h => h.Told.Length):F1}");

            // Our own aim, by the table: one visit more, one family moved and one nurse's day changed make 9; a nurse's four visits given to others about 30.
            Assert.InRange(At(points, 0.5), 0, kind.Key == "call-out" ? 32 : 10);
        }

        Assert.Equal(4, All.Value.Select(h => h.Kind).Distinct().Count());
    }

    private static IEnumerable<Happened> Day(int seed)
    {
        var day = new EventfulDay(seed);
        day.GoBy(TestContext.Current.CancellationToken);
        return day.Events;
    }

    private static Dictionary<string, int> Starts(WeekPlan plan) => plan.Visits.SelectMany(v => v.Tasks, (v, t) => (t, v.Start)).ToDictionary(p => p.t, p => p.Start, StringComparer.Ordinal);

    private static int At(int[] sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
