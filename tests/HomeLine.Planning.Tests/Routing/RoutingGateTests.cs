using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>
/// Four invented problems, a fixed seed and a fixed number of iterations: the cost must be the recorded one, bit for bit. A change of the search that
/// changes a cost is looked at and recorded anew on purpose, never in passing.
/// </summary>
public sealed class RoutingGateTests
{
    [Theory]
    [InlineData(11, 30, 900)]
    [InlineData(12, 60, 1526)]
    [InlineData(13, 60, 1382)]
    public void The_cost_of_a_simple_town_is_the_recorded_one(int seed, int homes, long recorded) =>
        Assert.Equal(recorded, Cost(InventedTown.Simple((ulong)seed, homes, vehicles: 30)));

    [Fact]
    public void The_cost_of_a_town_with_days_and_skills_is_the_recorded_one() => Assert.Equal(1401, Cost(InventedTown.Rich(14, 40)));

    private static long Cost(RoutingProblem problem)
    {
        RoutingPlan plan = new RoutingSearch(problem, new RoutingOptions { Seed = 1 }).Run(new IterationBudget(3_000), cancel: TestContext.Current.CancellationToken);
        Assert.Equal(plan.Missing, RoutingCheck.Judge(problem, plan).Faults.Length);
        return plan.Cost;
    }
}
