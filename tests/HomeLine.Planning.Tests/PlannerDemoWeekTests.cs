using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests;

/// <summary>The demonstration week planned from nothing.</summary>
public sealed class PlannerDemoWeekTests
{
    private static readonly Lazy<WeekPlan> Planned = new(() => Planner.Plan(DemoWeek.Problem, new PlanOptions(1, 6_000)));

    [Fact]
    public void The_plan_keeps_every_rule_and_its_score_is_the_checkers()
    {
        CheckReport report = Checker.Check(DemoWeek.Problem, Planned.Value);
        Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
        Assert.Equal(report.Score, Planned.Value.Score);
    }

    [Fact]
    public void Everything_is_done_and_only_what_was_late_before_the_week_is_late()
    {
        Assert.Empty(Planned.Value.Unmet);
        Assert.Equal(0, Planned.Value.Score.Critical);
        Assert.Equal(1_100, Planned.Value.Score.Risk);
    }

    [Fact]
    public void The_late_patients_are_visited_on_Monday()
    {
        string[] late = ["P09", "P30", "P31"];
        Assert.All(Planned.Value.Visits.Where(v => late.Contains(v.Patient)), v => Assert.InRange(v.Start, 0, 1_439));
    }

    [Fact]
    public void It_is_better_than_the_plan_made_by_hand() =>
        Assert.True(Planned.Value.Score < Checker.Check(DemoWeek.Problem, DemoWeek.Published).Score);
}
