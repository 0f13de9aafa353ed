using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests.Explaining;

/// <summary>Who asks to stop while it is explained why care is left gets every name at once, and no reason is looked for any more.</summary>
public sealed class StoppedExplainingTests
{
    private static readonly CancellationToken Stopped = new(canceled: true);

    [Fact]
    public void Not_stopped_the_loosened_rule_is_named()
    {
        (WeekProblem problem, MendedWeek bare) = NobodyComes();
        UnmetTask left = Assert.Single(Planner.WithReasons(problem, Out, bare, TestContext.Current.CancellationToken).Plan.Unmet);
        Assert.NotEmpty(left.Reasons);
        Assert.Contains(left.Relaxations, r => r.Code == ReasonCode.OnCall);
    }

    [Fact]
    public void Stopped_before_it_begins_the_care_is_named_without_reasons()
    {
        (WeekProblem problem, MendedWeek bare) = NobodyComes();
        UnmetTask left = Assert.Single(Planner.WithReasons(problem, Out, bare, Stopped).Plan.Unmet);
        Assert.Equal("T1", left.Task);
        Assert.Empty(left.Reasons);
    }

    [Fact]
    public void Stopped_on_the_way_it_says_so_and_tries_nothing_more()
    {
        (WeekProblem problem, MendedWeek bare) = NobodyComes();
        using var stop = new CancellationTokenSource();
        var roads = new StoppingRoads(problem.Travel, stop);
        UnmetTask left = Assert.Single(Planner.WithReasons(problem with { Travel = roads }, Out, bare, stop.Token).Plan.Unmet);
        Assert.Equal(ReasonCode.SearchStopped, Assert.Single(left.Reasons).Code);
        Assert.Empty(left.Relaxations);
    }

    [Fact]
    public void A_stopped_mend_still_names_all_care_and_keeps_every_rule()
    {
        (WeekProblem problem, _) = NobodyComes();
        MendedWeek mended = Planner.Mend(problem, Out, new MendOptions(OnCall: false), Stopped);
        Assert.Equal("T1", Assert.Single(mended.Plan.Unmet).Task);
        Assert.Empty(mended.Findings);
    }

    [Fact]
    public void A_stopped_question_about_visits_has_the_answers_found_so_far()
    {
        WeekProblem problem = Of([Nurse("N1", 0)], [Patient("A", 1)], [Task("a", "A")]);
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 20), cancel: TestContext.Current.CancellationToken);
        Assert.Single(Planner.Why(problem, plan, cancel: TestContext.Current.CancellationToken));
        Assert.Empty(Planner.Why(problem, plan, cancel: Stopped));
        Assert.Equal(ReasonCode.SearchStopped, Planner.WhyUnmet(problem, [], Stopped).Single().Reasons.Single().Code);
    }

    private static System.Collections.Immutable.ImmutableArray<Trouble> Out => [new Trouble.NurseOut("N1", 0, 1440)];

    /// <summary>N1 is out, and who could come instead is on call.</summary>
    private static (WeekProblem Problem, MendedWeek Bare) NobodyComes()
    {
        Nurse onCall = Nurse("N2", 0);
        WeekProblem problem = Of(
            [Nurse("N1", 0), onCall with { Shifts = [onCall.Shifts[0] with { OnCall = true }] }],
            [Patient("P1", 1)],
            [Task("T1", "P1") with { HardLatest = 1439 }],
            1);
        problem = problem with { Published = new WeekPlan([Visit("V1", "P1", "N1", At(0, 9), "T1") with { Promise = PromiseState.Told, ToldFrom = At(0, 9) }], [], default) };
        return (problem, Planner.Mend(problem, Out, new MendOptions(OnCall: false, Reasons: false), TestContext.Current.CancellationToken));
    }

    /// <summary>Asks to stop as soon as anybody looks at a road.</summary>
    private sealed class StoppingRoads(ITravelTimes roads, CancellationTokenSource stop) : ITravelTimes
    {
        public int Minutes(int from, int to)
        {
            stop.Cancel();
            return roads.Minutes(from, to);
        }
    }
}
