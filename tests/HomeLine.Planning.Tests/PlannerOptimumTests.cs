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
    [InlineData(5, 101, 30)]
    [InlineData(6, 201, 15)]
    public void Tiny_weeks_are_planned_as_well_as_can_be(int tasks, int firstSeed, int weeks) =>
        AllAsGoodAsCanBe(seed => RandomWeek.Tiny(seed, tasks), firstSeed, weeks);

    [Theory]
    [InlineData(3, 1_001, 60)]
    [InlineData(4, 2_001, 60)]
    [InlineData(5, 3_001, 40)]
    [InlineData(6, 4_001, 20)]
    public void Tiny_weeks_with_a_bit_of_everything_are_planned_as_well_as_can_be(int tasks, int firstSeed, int weeks) =>
        AllAsGoodAsCanBe(seed => RandomWeek.TinyRich(seed, tasks), firstSeed, weeks);

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

    private static void AllAsGoodAsCanBe(Func<int, WeekProblem> week, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = week(seed);
            PlanScore optimum = new FullEnumeration(problem).Best();
            WeekPlan plan = Plan(problem);
            if (plan.Score != optimum)
                Assert.Fail($"Seed {seed}: planned {plan.Score}, possible {optimum}.\n{Shrinking.Smallest(problem, p => Plan(p).Score != new FullEnumeration(p).Best())}");
            Assert.Equal([], Checker.Check(problem, plan).Findings);
        }
    }

    private static WeekPlan Plan(WeekProblem problem) =>
        Planner.Plan(problem, new PlanOptions(1, 1_500), cancel: TestContext.Current.CancellationToken);
}
