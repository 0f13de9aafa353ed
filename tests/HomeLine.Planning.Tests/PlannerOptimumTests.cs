using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests;

/// <summary>Tiny weeks (two nurses, three days) against full enumeration.</summary>
public sealed class PlannerOptimumTests
{
    [Theory]
    [InlineData(4, 1, 40)]
    [InlineData(5, 101, 15)]
    [InlineData(6, 201, 4)]
    public void Tiny_weeks_are_planned_as_well_as_can_be(int tasks, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.Tiny(seed, tasks);
            PlanScore optimum = new FullEnumeration(problem).Best();
            WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 1_500), cancel: TestContext.Current.CancellationToken);
            Assert.True(plan.Score >= optimum, $"Seed {seed}: {plan.Score} beats the enumeration's {optimum}.");
            Assert.True(plan.Score <= optimum, $"Seed {seed}: {plan.Score} is not the optimum {optimum}.");
            Assert.True(Checker.Check(problem, plan).Accepted);
        }
    }

    [Fact]
    public void One_more_nurse_never_makes_the_best_plan_worse()
    {
        for (int seed = 301; seed < 311; seed++)
        {
            WeekProblem problem = RandomWeek.Tiny(seed, 4);
            PlanScore alone = new FullEnumeration(problem with { Nurses = [problem.Nurses[0]] }).Best();
            Assert.True(new FullEnumeration(problem).Best() <= alone);
        }
    }
}
