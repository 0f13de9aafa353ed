using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>Choosing the best set of routes from a pool.</summary>
public sealed class PoolChoiceTests
{
    private static readonly PoolProblem ThreeVisits = new(3, [[[0]], [[1]], [[2]]], [null, null, null], [5]);

    [Fact]
    public void The_cheapest_set_that_covers_every_visit_once_is_chosen() =>
        Assert.Equal(["0 1", "2"], Chosen(ThreeVisits, bar: 100, (0, [0], 5), (0, [1, 2], 9), (0, [0, 1], 6), (0, [2], 4)));

    [Fact]
    public void Nothing_is_answered_when_the_bar_is_not_beaten() =>
        Assert.Empty(Chosen(ThreeVisits, bar: 10, (0, [0], 5), (0, [1, 2], 9), (0, [0, 1], 6), (0, [2], 4)));

    [Fact]
    public void No_more_vehicles_than_there_are() =>
        Assert.Equal(["0 1 2"], Chosen(ThreeVisits with { Vehicles = [1] }, bar: 100, (0, [0], 1), (0, [1], 1), (0, [2], 1), (0, [0, 1, 2], 50)));

    [Fact]
    public void A_request_may_be_left_out_at_its_price() =>
        Assert.Equal(["0"], Chosen(new PoolProblem(2, [[[0]], [[1]]], [null, 7], [5]), bar: 100, (0, [0], 5), (0, [1], 9), (0, [0, 1], 13)));

    [Fact]
    public void One_pattern_of_days_is_served_whole() =>
        // Visits 0 and 1 together, or visit 2 alone: half a pattern would be cheapest and is no answer.
        Assert.Equal(["2"], Chosen(new PoolProblem(3, [[[0, 1], [2]]], [null], [5]), bar: 100, (0, [0], 1), (0, [1], 9), (0, [2], 8)));

    [Fact]
    public void A_set_of_visits_is_kept_in_its_cheapest_order()
    {
        var pool = new RoutePool(10, 4);
        pool.Add(0, [1, 2], 9);
        pool.Add(0, [2, 1], 7);
        pool.Add(0, [1, 2], 8);

        PooledRoute only = Assert.Single(pool.Routes());
        Assert.Equal(7, only.Cost);
        Assert.Equal([2, 1], only.Visits);
    }

    private static string[] Chosen(PoolProblem problem, long bar, params (int Kind, int[] Visits, long Cost)[] routes)
    {
        var pool = new RoutePool(100, 4);
        foreach ((int kind, int[] visits, long cost) in routes) pool.Add(kind, visits, cost);
        PooledRoute[] pooled = [.. pool.Routes()];
        IReadOnlyList<int>? chosen = new PoolChoice(problem, pooled).Better(bar, 5, double.PositiveInfinity, TestContext.Current.CancellationToken);
        return [.. (chosen ?? []).Select(i => string.Join(" ", pooled[i].Visits)).Order(StringComparer.Ordinal)];
    }
}
