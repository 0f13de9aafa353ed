using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>Searches side by side that meet at fixed numbers of iterations.</summary>
public sealed class RoutingIslandsTests
{
    [Fact]
    public void The_same_seed_islands_and_iterations_give_the_same_plan()
    {
        RoutingProblem problem = InventedTown.Simple(13, 60, vehicles: 30);

        Assert.Equal(Written(problem, 3), Written(problem, 3));
    }

    [Fact]
    public void One_island_is_the_plain_search()
    {
        RoutingProblem problem = InventedTown.Simple(12, 60, vehicles: 30);

        Assert.Equal(Written(new RoutingSearch(problem, Options).Run(new IterationBudget(3_000), cancel: TestContext.Current.CancellationToken)), Written(problem, 1));
    }

    [Fact]
    public void An_island_with_less_to_do_does_not_hold_the_others_up()
    {
        RoutingProblem problem = InventedTown.Simple(12, 60, vehicles: 30);
        int asked = 0;

        RoutingPlan plan = new RoutingIslands(problem, Options, 2).Run(() => new IterationBudget(Interlocked.Increment(ref asked) == 1 ? 700 : 4_000), TestContext.Current.CancellationToken);

        Assert.Empty(RoutingCheck.Judge(problem, plan).Faults);
    }

    private static RoutingOptions Options => new() { Seed = 1, MeetEvery = 640 };

    private static string Written(RoutingProblem problem, int islands) =>
        Written(new RoutingIslands(problem, Options, islands).Run(() => new IterationBudget(3_000), TestContext.Current.CancellationToken));

    private static string Written(RoutingPlan plan) => $"{plan.Cost}: {string.Join(" | ", plan.Routes.Select(route => string.Join(' ', route.Requests)))}";
}
