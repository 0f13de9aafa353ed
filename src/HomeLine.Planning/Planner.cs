using System.Collections.Immutable;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Explaining;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Reserve;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning;

/// <summary>How long and with which chance to search. Same problem and options, same plan.</summary>
/// <param name="Seed">Seed of the search.</param>
/// <param name="Iterations">Ruin-and-recreate rounds; the only thing that bounds the search besides cancellation.</param>
/// <param name="Islands">Lines of search side by side, 1 to 64, each with all the rounds; they run in parallel and exchange plans at fixed rounds.</param>
public sealed record PlanOptions(ulong Seed = 1, int Iterations = 20_000, int Islands = 1);

/// <summary>Where a running search stands.</summary>
/// <param name="Iteration">Rounds done.</param>
/// <param name="Iterations">Rounds asked for.</param>
/// <param name="Best">Score of the best plan so far.</param>
/// <param name="Visits">Visits of the best plan so far.</param>
/// <param name="UnmetTasks">Tasks the best plan leaves unmet.</param>
/// <param name="ForReserve">Whether a plan stands already and free time for care nobody planned is looked for; the score and what follows are that plan's.</param>
public sealed record PlanProgress(int Iteration, int Iterations, PlanScore Best, int Visits, int UnmetTasks, bool ForReserve = false);

/// <summary>The three questions this room answers: plan a week, where could an urgent visit go, and mend a broken day.</summary>
public static class Planner
{
    /// <summary>Of the answers that another one beats on every count, so many are written out.</summary>
    private const int BeatenWritten = 12;

    /// <summary>
    /// Plans the problem. Anytime: on cancellation the best plan so far is returned, never nothing. With a published plan that still keeps every
    /// rule the result is never worse than it, and is that plan itself when nothing better was found.
    /// </summary>
    /// <exception cref="ArgumentException">The problem contradicts itself: an identifier twice, an unknown patient, a shift that ends before it begins.</exception>
    public static WeekPlan Plan(
        WeekProblem problem,
        PlanOptions options,
        IProgress<PlanProgress>? progress = null,
        CancellationToken cancel = default)
    {
        var week = new CompiledWeek(problem);
        var search = new WeekSearch(week);
        WeekState best = new Islands(week, options).Improve(search.First(cancel), progress, cancel);
        if (!cancel.IsCancellationRequested) best = search.WithGapsFilled(best, cancel);
        PlanScore score = week.TriesManyWays ? Written(problem, new PlanWriting(week).Visits(best)) : search.ScoreOf(best);
        if (KeptPublished(problem) is { } published && published.Score <= score) return published;
        var visits = new PlanWriting(week).Visits(best);
        return new WeekPlan(visits, UnmetCare.List(week, search, best, visits, cancel: cancel), score);
    }

    /// <summary>
    /// Plans the problem and keeps free time for care nobody planned, at the price of work and never of care: critical, risk and duties are no worse than
    /// <see cref="Plan"/> makes them with the same options. Of plans alike in these three the one with fewest slots missing, then the one with less work, fewer points of people, less
    /// unused life; in this order the result is also never worse than a published plan that still keeps every rule. Where <see cref="Plan"/> leaves enough free by
    /// itself, its plan is the answer. Takes up to three times as long. On cancellation the best plan so far is returned.
    /// </summary>
    /// <exception cref="ArgumentException">The problem contradicts itself.</exception>
    public static ReservedWeek PlanWithReserve(
        WeekProblem problem,
        PlanOptions options,
        ReserveRules rules,
        IProgress<PlanProgress>? progress = null,
        CancellationToken cancel = default) => new ReserveSearch(problem, options, rules).Plan(progress, cancel);

    /// <summary>
    /// Proves how far a plan may be from the best there is: a lower bound of each tier in turn, up to the first that stays open. Visits that must stay are in every plan. Anytime: on
    /// cancellation what has been proven so far is returned. Plans with a second visit of a patient's day for safety are not counted.
    /// </summary>
    /// <param name="problem">The problem.</param>
    /// <param name="plan">A plan that keeps every rule.</param>
    /// <param name="options">How far to go; the defaults when left out.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ArgumentException">The problem contradicts itself, the plan breaks a rule, or a visit that must stay lies where no nurse-day can have it.</exception>
    public static WeekBound Bound(WeekProblem problem, WeekPlan plan, BoundOptions? options = null, CancellationToken cancel = default)
    {
        ProblemFaults.Refuse(problem);
        return new WeekBounding(problem, plan, options ?? new BoundOptions()).Of(cancel);
    }

    /// <summary>What a plan is worth as it is written.</summary>
    private static PlanScore Written(WeekProblem problem, ImmutableArray<PlannedVisit> visits)
    {
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        return Checker.Check(problem, new WeekPlan(visits, [.. problem.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))], default)).Score;
    }

    /// <summary>The published plan as the checker counts it; empty when there is none or it breaks a rule.</summary>
    internal static WeekPlan? KeptPublished(WeekProblem problem)
    {
        if (problem.Published is not { Visits.IsDefault: false } published) return null;
        CheckReport report = Checker.Check(problem, published);
        return report.Accepted ? published with { Score = report.Score } : null;
    }

    /// <summary>Finds workable answers to an urgent need in the published plan, moving as few told families as it can.</summary>
    /// <exception cref="ArgumentException">The problem has no published plan, or names unknown tasks or visits.</exception>
    public static UrgentAnswers Answer(WeekProblem problem, UrgentNeed need) => new ReadyWeek(problem).Options(need, beaten: BeatenWritten);

    /// <summary>
    /// Repairs the published plan after a nurse called out, roads changed or a visit overran: as little late as can be, then as few told families and nurses
    /// disturbed as can be, then little driving. Visits nothing touches stay. On cancellation the best repair so far is returned.
    /// </summary>
    /// <exception cref="ArgumentException">The problem has no published plan, or a trouble names nobody and nothing it knows.</exception>
    public static MendedWeek Mend(WeekProblem problem, ImmutableArray<Trouble> troubles, MendOptions options, CancellationToken cancel = default)
    {
        ProblemFaults.Refuse(problem);
        WeekPlan published = problem.Published is { Visits.IsDefault: false } plan
            ? plan
            : throw new ArgumentException("There is no published plan to mend.", nameof(problem));
        var day = new BrokenDay(problem, published, troubles);
        var table = new StandingTable(day.Problem, day.Problem.Published!, day.Changes);
        var search = new MendSearch(table, day, options);
        MendState state = search.Mend(cancel);
        return new MendReport(table, day, problem, published).Of(search, state, options.Reasons, cancel);
    }

    /// <summary>Says of a repair made without reasons why care is left without a visit, and which one loosened rule would place it.</summary>
    /// <param name="problem">The problem that was mended.</param>
    /// <param name="troubles">What broke it.</param>
    /// <param name="mended">The repair.</param>
    /// <param name="cancel">Once it asks to stop, no more reasons are looked for.</param>
    public static MendedWeek WithReasons(WeekProblem problem, ImmutableArray<Trouble> troubles, MendedWeek mended, CancellationToken cancel = default)
    {
        if (mended.Plan.Unmet.IsEmpty || problem.Published is not { Visits.IsDefault: false } published) return mended;
        var day = new BrokenDay(problem, published, troubles);
        return mended with { Plan = mended.Plan with { Unmet = MendReport.Explained(day.Problem, published, mended.Plan, cancel) } };
    }

    /// <summary>
    /// Says of visits of a plan why they are on their day and with their nurse, by trying the best other day and the best other nurse. Visits that must stay,
    /// and those the problem no longer allows where they are, are left out.
    /// </summary>
    /// <param name="problem">The problem the plan answers.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="visits">Identifiers of the visits asked about; empty for all.</param>
    /// <param name="cancel">Stops it: what was found so far is returned.</param>
    /// <exception cref="ArgumentException">The problem contradicts itself.</exception>
    public static ImmutableArray<VisitReason> Why(WeekProblem problem, WeekPlan plan, ImmutableArray<string> visits = default, CancellationToken cancel = default) =>
        new WhyHere(problem, plan).Of(plan.Visits.Where(v => visits.IsDefaultOrEmpty || visits.Contains(v.Id)), cancel);

    /// <summary>Says of care a plan leaves unmet why no nurse and day has room for it, and which one loosened rule would place it; most at risk first.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="visits">The plan.</param>
    /// <param name="cancel">Once it asks to stop, no more reasons are looked for.</param>
    /// <exception cref="ArgumentException">The problem contradicts itself.</exception>
    public static ImmutableArray<UnmetTask> WhyUnmet(WeekProblem problem, ImmutableArray<PlannedVisit> visits, CancellationToken cancel = default)
    {
        var week = new CompiledWeek(problem);
        var search = new WeekSearch(week);
        WeekState state = search.Reading.Fresh();
        search.Reading.Adopt(state, new WeekPlan(visits, [], default));
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        return UnmetCare.List(week, search, state, visits, problem.Tasks.Select(t => t.Id).Where(t => !done.Contains(t)).ToHashSet(StringComparer.Ordinal), cancel);
    }
}
