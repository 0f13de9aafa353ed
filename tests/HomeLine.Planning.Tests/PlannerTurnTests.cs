using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests;

/// <summary>Whose turn a day is decides among places that cost the same work. Invented data.</summary>
public sealed class PlannerTurnTests
{
    [Theory]
    [InlineData(4, 0, "N2")]
    [InlineData(0, 4, "N1")]
    public void Of_two_nurses_alike_the_one_goes_whose_turn_it_is(int first, int second, string goes)
    {
        WeekPlan plan = Planned(Of([Turn(Nurse("N1", 0), first), Turn(Nurse("N2", 0), second)], [Patient("A", 1)], [Task("a", "A")]));
        Assert.Equal(goes, Assert.Single(plan.Visits).Nurse);
    }

    [Fact]
    public void A_turn_never_buys_a_minute_of_driving()
    {
        WeekPlan plan = Planned(Of([Turn(Nurse("N1", 0), 50), Nurse("N2", 0) with { Home = 3 }], [Patient("A", 1)], [Task("a", "A")]));
        Assert.Equal("N1", Assert.Single(plan.Visits).Nurse);
        Assert.True(plan.Score.People >= 50);
    }

    [Fact]
    public void Tiny_weeks_with_turns_are_planned_as_well_as_can_be()
    {
        for (int seed = 6_001; seed < 6_021; seed++)
        {
            WeekProblem week = RandomWeek.TinyRich(seed, 5);
            week = week with { Nurses = [.. week.Nurses.Select((n, i) => Turn(n, (seed + i) % 4))] };
            Assert.Equal((seed, new FullEnumeration(week).Best()), (seed, Planned(week).Score));
        }
    }

    private static Nurse Turn(Nurse nurse, int points) => nurse with { Shifts = [.. nurse.Shifts.Select(s => s with { TurnPoints = points })] };

    private static WeekPlan Planned(WeekProblem problem)
    {
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 1_500), cancel: TestContext.Current.CancellationToken);
        Assert.Equal(plan.Score, Checker.Check(problem, plan).Score);
        return plan;
    }
}
