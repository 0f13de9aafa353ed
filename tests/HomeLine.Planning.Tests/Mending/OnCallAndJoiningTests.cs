using CsCheck;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Mending;

/// <summary>A lost visit may go to the nurse on call, at a price, and its care may join another visit of the patient.</summary>
public sealed class OnCallAndJoiningTests
{
    [Fact]
    public void A_visit_nobody_on_a_route_can_take_goes_to_the_nurse_on_call()
    {
        WeekProblem problem = Lost(Nurse("N2", 0, onCall: true));
        MendedWeek mended = Mend(problem);
        Assert.Equal("N2", mended.Plan.Visits.Single().Nurse);
        Assert.Empty(mended.Plan.Unmet);
        // Told another nurse 4, the call 1, one nurse more 3, and 6 for the nurse on call (our own default).
        Assert.Equal(4 + 1 + 3 + 6, mended.Score.Disruption);
    }

    [Fact]
    public void Where_that_is_not_wanted_nobody_on_call_is_sent()
    {
        MendedWeek mended = Mend(Lost(Nurse("N2", 0, onCall: true)), new MendOptions(1, 50, OnCall: false));
        Assert.Equal("T1", Assert.Single(mended.Plan.Unmet).Task);
        Assert.Contains(mended.Plan.Unmet[0].Relaxations, r => r.Code == ReasonCode.OnCall);
    }

    [Fact]
    public void A_nurse_on_a_route_goes_before_the_nurse_on_call() =>
        Assert.Equal("N3", Mend(Lost(Nurse("N2", 0, onCall: true), Nurse("N3", 0, onCall: false))).Plan.Visits.Single().Nurse);

    [Fact]
    public void The_nurse_on_call_goes_only_in_her_hours_and_only_where_she_may()
    {
        Nurse evening = Nurse("N2", 0, onCall: true) with { Shifts = [new Shift(0, SmallWeek.At(0, 18), SmallWeek.At(0, 22), SmallWeek.At(0, 22), OnCall: true)] };
        Assert.Equal(SmallWeek.At(0, 18, 10), Mend(Lost(evening)).Plan.Visits.Single().Start);
        Assert.Single(Mend(Lost(evening, hardLatest: SmallWeek.At(0, 17))).Plan.Unmet);
        Assert.Single(Mend(Lost(Nurse("N2", 0, onCall: true) with { Skills = [] })).Plan.Unmet);
    }

    [Fact]
    public void Care_that_lost_its_visit_joins_the_other_visit_of_the_patient()
    {
        MendedWeek mended = Mend(TwoVisits());
        PlannedVisit visit = Assert.Single(mended.Plan.Visits);
        Assert.Equal(("V2", "N2", SmallWeek.At(1, 9), 70), (visit.Id, visit.Nurse, visit.Start, visit.Minutes));
        Assert.Equal(["T1", "T2"], visit.Tasks);
        Assert.Empty(mended.Plan.Unmet);
        FamilyCall call = Assert.Single(mended.Calls);
        Assert.Equal(("V1", ReasonCode.TellJoined, "V2"), (call.Before.Id, call.Reason.Code, call.After!.Id));
        // Merged 2, the call 1, one nurse more 3.
        Assert.Equal(2 + 1 + 3, mended.Score.Disruption);
        Assert.Equal([], mended.Findings);
    }

    [Fact]
    public void It_joins_nothing_it_may_not()
    {
        Assert.Equal("T1", Assert.Single(Mend(TwoVisits(), new MendOptions(1, 50, Merges: false)).Plan.Unmet).Task);
        Assert.Equal("T1", Assert.Single(Mend(TwoVisits(hardLatest: SmallWeek.At(1, 8))).Plan.Unmet).Task);
        Assert.Equal("T1", Assert.Single(Mend(TwoVisits(skill: "PORT")).Plan.Unmet).Task);
    }

    [Fact]
    public void Every_task_is_done_once_or_named_and_no_rule_is_broken() =>
        Gen.Int[1, 1_000_000].Sample(MendsAWeekWithTwoNursesOut, iter: 150, threads: 1);

    [Fact]
    public void Care_that_joined_another_visit_is_not_explained_as_unmet() => MendsAWeekWithTwoNursesOut(1849);

    private static void MendsAWeekWithTwoNursesOut(int seed)
    {
        WeekProblem week = RandomWeek.Rich(seed);
        WeekPlan plan = Planner.Plan(week, new PlanOptions(1, 40), cancel: TestContext.Current.CancellationToken);
        int now = Math.Min(1440 + 360, (week.DayCount * 1440) - 1);
        WeekProblem problem = week with
        {
            Now = now,
            Published = plan with { Visits = [.. plan.Visits.Select(v => v with { Promise = v.Start < now ? PromiseState.Done : PromiseState.Told, ToldFrom = v.Start })] },
        };
        MendedWeek mended = Planner.Mend(problem, [.. problem.Nurses.Take(2).Select(n => new Trouble.NurseOut(n.Id, 1440, 4 * 1440))], new MendOptions((ulong)seed, 60), TestContext.Current.CancellationToken);
        Assert.Equal(problem.Tasks.Select(t => t.Id).Order(), mended.Plan.Visits.SelectMany(v => v.Tasks).Concat(mended.Plan.Unmet.Select(u => u.Task)).Order());
        // A visit that is lost may take the gap of a break with it.
        Assert.Equal([], mended.Findings.Where(f => f.Reason.Code != ReasonCode.BreakMissing).Select(f => f.Reason.Sentence));
    }

    private static MendedWeek Mend(WeekProblem problem, MendOptions? options = null) =>
        Planner.Mend(problem, [new Trouble.NurseOut("N1", 0, 1440)], options ?? new MendOptions(1, 50), TestContext.Current.CancellationToken);

    private static Nurse Nurse(string id, int day, bool onCall) =>
        SmallWeek.Nurse(id, day) is var nurse && onCall ? nurse with { Shifts = [nurse.Shifts[0] with { OnCall = true }] } : SmallWeek.Nurse(id, day);

    /// <summary>P1's visit at 09:00 was told with N1, who is out.</summary>
    private static WeekProblem Lost(Nurse other, Nurse? further = null, int hardLatest = int.MaxValue)
    {
        WeekProblem problem = SmallWeek.Of(
            [SmallWeek.Nurse("N1", 0), other, .. further is null ? Array.Empty<Nurse>() : [further]],
            [SmallWeek.Patient("P1", 1)],
            [SmallWeek.Task("T1", "P1") with { HardLatest = Math.Min(hardLatest, 1439) }],
            1);
        return Told(problem, SmallWeek.Visit("V1", "P1", "N1", SmallWeek.At(0, 9), "T1"));
    }

    /// <summary>P1 is visited on both days; N1 is out on the first, and nobody else works then.</summary>
    private static WeekProblem TwoVisits(int hardLatest = int.MaxValue, string skill = "PICC")
    {
        WeekProblem problem = SmallWeek.Of(
            [SmallWeek.Nurse("N1", 0) with { Skills = ["PICC", "PORT"] }, SmallWeek.Nurse("N2", 1)],
            [SmallWeek.Patient("P1", 1)],
            [SmallWeek.Task("T1", "P1", 0, 1) with { HardLatest = hardLatest, Skills = [skill] }, SmallWeek.Task("T2", "P1", 1, 1)],
            2);
        return Told(problem, SmallWeek.Visit("V1", "P1", "N1", SmallWeek.At(0, 9), "T1"), SmallWeek.Visit("V2", "P1", "N2", SmallWeek.At(1, 9), "T2"));
    }

    private static WeekProblem Told(WeekProblem problem, params PlannedVisit[] visits) => problem with
    {
        Published = SmallWeek.Plan([.. visits.Select(v => v with { Promise = PromiseState.Told, ToldFrom = v.Start })]),
    };
}
