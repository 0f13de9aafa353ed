using HomeLine.Planning.Explaining;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests.Explaining;

/// <summary>Why a visit is where it is, on weeks whose reasons can be seen by eye: places ten minutes apart on a line, nurses live at place 0.</summary>
public sealed class WhyHereTests
{
    [Fact]
    public void Care_due_on_the_first_day_is_there_because_another_day_would_be_late()
    {
        VisitReason why = Why(Of([Nurse("N1", 0, 1, 2)], [Patient("A", 1)], [Task("a", "A")]));
        Assert.Equal(ReasonCode.WhyRisk, why.Day.Code);
        Assert.Equal("Mon: Tue with Nurse N1 would cost 50 points of care late or unmet more.", why.Day.Sentence);
        Assert.Equal(ReasonCode.WhyOnly, why.Nurse.Code);
    }

    [Fact]
    public void The_nurse_who_lives_nearer_is_there_because_of_the_road()
    {
        Nurse far = Nurse("N2", 0) with { Home = 5 };
        VisitReason why = Why(Of([Nurse("N1", 0), far], [Patient("A", 1)], [Task("a", "A")]));
        Assert.Equal(ReasonCode.WhyWork, why.Nurse.Code);
        Assert.Equal("Nurse N1: Mon with Nurse N2 would cost 60 minutes of work more.", why.Nurse.Sentence);
        Assert.Equal(ReasonCode.WhyOnly, why.Day.Code);
    }

    [Fact]
    public void A_nurse_the_patient_knows_is_there_because_of_that()
    {
        VisitReason why = Why(Of([Nurse("N1", 0), Nurse("N2", 0)], [Patient("A", 1) with { KnownNurses = ["N2"] }], [Task("a", "A")]));
        Assert.Equal(ReasonCode.WhyPeople, why.Nurse.Code);
    }

    [Fact]
    public void Two_nurses_alike_are_a_tie() =>
        Assert.Equal(ReasonCode.WhyTie, Why(Of([Nurse("N1", 0), Nurse("N2", 0)], [Patient("A", 1)], [Task("a", "A")])).Nurse.Code);

    [Fact]
    public void A_plan_made_by_hand_is_told_what_would_be_better()
    {
        WeekProblem problem = Of([Nurse("N1", 0), Nurse("N2", 0) with { Home = 5 }], [Patient("A", 1)], [Task("a", "A")]);
        WeekPlan byHand = Plan(Visit("v", "A", "N2", At(0, 8, 40), "a"));
        Assert.Equal(ReasonCode.WhyNotBest, Assert.Single(Planner.Why(problem, byHand, cancel: TestContext.Current.CancellationToken)).Nurse.Code);
    }

    [Fact]
    public void In_a_planned_week_every_visit_has_its_reasons_and_none_is_better_elsewhere()
    {
        WeekPlan plan = Planner.Plan(DemoWeek.Problem, new PlanOptions(1, 20_000), cancel: TestContext.Current.CancellationToken);
        var reasons = Planner.Why(DemoWeek.Problem, plan, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(plan.Visits.Select(v => v.Id), reasons.Select(r => r.Visit));
        Assert.DoesNotContain(reasons, r => ReasonCode.WhyNotBest == r.Day.Code || ReasonCode.WhyNotBest == r.Nurse.Code);
    }

    private static VisitReason Why(WeekProblem problem) =>
        Assert.Single(Planner.Why(problem, Planner.Plan(problem, new PlanOptions(1, 200), cancel: TestContext.Current.CancellationToken)));
}
