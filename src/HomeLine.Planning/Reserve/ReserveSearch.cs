using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Explaining;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Reserve;

/// <summary>
/// Plans a week without a reserve first. Where days are short of free slots it is planned again with stand-ins on those days, they are taken out, the nurse-days are timed anew so that
/// what they left is free time and not waiting, and once more with those days that fell short by that. The best of these plans is kept.
/// </summary>
internal sealed class ReserveSearch(WeekProblem problem, PlanOptions options, ReserveRules rules)
{
    private const int Passes = 2;

    public ReservedWeek Plan(IProgress<PlanProgress>? progress, CancellationToken cancel)
    {
        Candidate without = Of(Planner.Plan(problem, options, progress, cancel)), best = without;
        if (Planner.KeptPublished(problem) is { } published && Of(published) is var standing && standing.IsBetterThan(best)) best = standing;
        var wanted = new int[problem.DayCount];
        var standIns = new Lazy<StandIns>(() => new StandIns(problem, without.Days.Max(d => d.Asked)));
        Candidate last = best, given = best;
        for (int pass = 0; pass < Passes && best.Missing > 0 && !cancel.IsCancellationRequested; pass++)
        {
            if (!AskForMore(wanted, last.Days)) break;
            WeekPlan? found = Searched(standIns.Value, wanted, best.Plan, progress is null ? null : new Standing(progress, without.Plan), cancel);
            if (found is null) break;
            last = Of(found);
            if (last.IsBetterThan(best)) best = last;
        }

        return new ReservedWeek(ReferenceEquals(best, given) ? best.Plan : Explained(best.Plan, cancel), best.Days, without.Plan.Score.Work, without.Missing);
    }

    private static bool AskForMore(int[] wanted, ImmutableArray<DaySlots> days)
    {
        bool more = false;
        foreach (DaySlots day in days)
        {
            if (day.Missing == 0 || wanted[day.Day] >= day.Asked) continue;
            wanted[day.Day] = day.Asked;
            more = true;
        }

        return more;
    }

    /// <summary>The week planned around stand-ins, without them; empty when stopped before it was whole.</summary>
    private WeekPlan? Searched(StandIns standIns, int[] wanted, WeekPlan from, IProgress<PlanProgress>? progress, CancellationToken cancel)
    {
        var week = new CompiledWeek(standIns.Joining(wanted, rules.SlotMinutes));
        var search = new WeekSearch(week);
        WeekState built = search.First(cancel), adopted = search.Filled(from, cancel);
        WeekState best = new Islands(week, options).Improve(search.ScoreOf(built) < search.ScoreOf(adopted) ? built : adopted, progress, cancel);
        return cancel.IsCancellationRequested ? null : Timed(standIns.TakenOut(new PlanWriting(week).Visits(best)), cancel);
    }

    /// <summary>Visits in their order on their nurse-days, as early as the road allows, in the real week; empty when the checker holds something against it.</summary>
    private WeekPlan? Timed(ImmutableArray<PlannedVisit> visits, CancellationToken cancel)
    {
        var week = new CompiledWeek(problem);
        var search = new WeekSearch(week);
        ImmutableArray<PlannedVisit> written = new PlanWriting(week).Visits(search.Filled(new WeekPlan(visits, [], default), cancel));
        var plan = new WeekPlan(written, [.. Open(written).Select(t => new UnmetTask(t, [], []))], default);
        CheckReport report = Checker.Check(problem, plan);
        return report.Accepted ? plan with { Score = report.Score } : null;
    }

    private IEnumerable<string> Open(ImmutableArray<PlannedVisit> visits)
    {
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        return problem.Tasks.Select(t => t.Id).Where(t => !done.Contains(t));
    }

    /// <summary>Reasons are looked for once, for the plan that is kept.</summary>
    private WeekPlan Explained(WeekPlan plan, CancellationToken cancel)
    {
        if (plan.Unmet.IsEmpty) return plan;
        var week = new CompiledWeek(problem);
        var search = new WeekSearch(week);
        WeekState state = search.Reading.Fresh();
        search.Reading.Adopt(state, plan);
        return plan with { Unmet = UnmetCare.List(week, search, state, plan.Visits, Open(plan.Visits).ToHashSet(StringComparer.Ordinal), cancel) };
    }

    private Candidate Of(WeekPlan plan) => new(plan, DaySlots.Of(problem, plan.Visits, rules));

    private sealed record Candidate(WeekPlan Plan, ImmutableArray<DaySlots> Days)
    {
        public int Missing { get; } = Days.Sum(d => d.Missing);

        /// <summary>Care first, then the slots, then the rest.</summary>
        public bool IsBetterThan(Candidate other)
        {
            int care = (Plan.Score with { Work = 0, People = 0, UnusedLife = 0 }).CompareTo(other.Plan.Score with { Work = 0, People = 0, UnusedLife = 0 });
            if (care != 0) return care < 0;
            return Missing != other.Missing ? Missing < other.Missing : Plan.Score < other.Plan.Score;
        }
    }

    /// <summary>While the reserve is looked for, what is told is the plan that stands.</summary>
    private sealed class Standing(IProgress<PlanProgress> told, WeekPlan plan) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) =>
            told.Report(value with { Best = plan.Score, Visits = plan.Visits.Length, UnmetTasks = plan.Unmet.Length, ForReserve = true });
    }
}
