using System.Collections.Immutable;
using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>Small cases anyone can check by hand. Places lie on a line, so travel is the difference of their numbers.</summary>
public sealed class RoutingSearchTests
{
    [Fact]
    public void Two_homes_on_one_road_make_one_route()
    {
        RoutingPlan plan = Best(Line([Home(1), Home(2)], [Nurse(count: 2)]));

        Assert.Equal(4, plan.Cost);
        Assert.Single(plan.Routes);
    }

    [Fact]
    public void Two_windows_at_the_same_minute_take_two_nurses()
    {
        RoutingPlan plan = Best(Line([Home(1, 10, 10), Home(2, 10, 10)], [Nurse(count: 2)]));

        Assert.Equal(6, plan.Cost);
        Assert.Equal(2, plan.Routes.Length);
    }

    [Fact]
    public void A_full_bag_takes_a_second_trip_by_another_nurse()
    {
        RoutingPlan plan = Best(Line([Home(1), Home(2), Home(3)], [Nurse(count: 2) with { Capacity = 2 }]));

        // {2, 3} and {1}: 6 + 2.
        Assert.Equal(8, plan.Cost);
    }

    [Fact]
    public void What_nobody_can_reach_in_time_is_reported_as_missing()
    {
        RoutingPlan plan = Best(Line([Home(9, 0, 5), Home(1)], [Nurse()]));

        Assert.Equal(1, plan.Missing);
        Assert.Equal([0], plan.LeftOut);
        Assert.Equal(2, plan.Cost);
    }

    [Fact]
    public void An_optional_home_is_left_out_when_the_way_costs_more_than_its_price()
    {
        RoutingPlan far = Best(Line([Home(9) with { PriceOfLeavingOut = 17 }, Home(1)], [Nurse()]));
        RoutingPlan near = Best(Line([Home(9) with { PriceOfLeavingOut = 16 }, Home(1)], [Nurse()]));

        Assert.Equal(18, far.Cost);
        Assert.Equal(18, near.Cost);
        Assert.Equal([0], Best(Line([Home(9) with { PriceOfLeavingOut = 15 }, Home(1)], [Nurse()])).LeftOut);
    }

    [Fact]
    public void Only_an_eligible_nurse_is_sent()
    {
        RoutingPlan plan = Best(Line([Home(5) with { EligibleKinds = [1] }], [Nurse(at: 4), Nurse(at: 0)]));

        Assert.Equal(1, Assert.Single(plan.Routes).Kind);
        Assert.Equal(10, plan.Cost);
    }

    [Fact]
    public void The_nearer_base_serves()
    {
        RoutingPlan plan = Best(Line([Home(5), Home(1)], [Nurse(at: 0), Nurse(at: 6)]));

        Assert.Equal(4, plan.Cost);
        Assert.Equal(2, plan.Routes.Length);
    }

    [Fact]
    public void Homes_on_one_road_are_visited_on_the_same_day()
    {
        RoutingRequest either = Home(7) with { DayPatterns = [0b01, 0b10] };
        RoutingPlan plan = Best(Line([either, Home(8) with { DayPatterns = [0b10] }], [Nurse(), Nurse(day: 1)]));

        Assert.Equal(16, plan.Cost);
        Assert.Equal(1, Assert.Single(plan.Routes).Kind);
    }

    [Fact]
    public void A_pattern_of_two_days_is_visited_on_both()
    {
        RoutingPlan plan = Best(Line([Home(3) with { DayPatterns = [0b11] }], [Nurse(), Nurse(day: 1)]));

        Assert.Equal(12, plan.Cost);
        Assert.Equal(2, plan.Routes.Length);
    }

    [Fact]
    public void Waiting_at_home_does_not_lengthen_a_day()
    {
        // Out at 48, there at 50, back at 57: 9 minutes, although the day opens at 0.
        RoutingProblem problem = Line([Home(2, 50, 60) with { Service = 5 }], [Nurse() with { LongestDuration = 9 }]);

        Assert.Equal(0, Best(problem).Missing);
        Assert.Equal(1, Best(problem with { Kinds = [Nurse() with { LongestDuration = 8 }] }).Missing);
    }

    [Fact]
    public void A_paid_duration_counts_the_wait_between_visits()
    {
        // Home 1 at 10, home 2 at 20: 1 + 10 + 2 driven and waited, 4 of them driven; two routes: 2 + 4 and nothing waited.
        RoutingProblem problem = Line([Home(1, 10, 10), Home(2, 20, 20)], [Nurse(count: 2)]) with { DurationIsCost = true };

        Assert.Equal(12, Best(problem).Cost);
        Assert.Equal(17, Best(problem with { Kinds = [Nurse()] }).Cost);
    }

    [Fact]
    public void A_problem_without_requests_or_vehicles_is_answered_too()
    {
        Assert.Equal(0, Best(Line([], [Nurse()])).Cost);
        Assert.Equal(1, Best(Line([Home(1)], [])).Missing);
    }

    [Fact]
    public void A_problem_that_contradicts_itself_is_refused_with_the_place()
    {
        ArgumentException fault = Assert.Throws<ArgumentException>(() => Best(Line([Home(1, 9, 3)], [Nurse()])));

        Assert.Contains("Request 0 closes before it opens", fault.Message, StringComparison.Ordinal);
    }

    private static RoutingPlan Best(RoutingProblem problem)
    {
        RoutingPlan plan = new RoutingSearch(problem, new RoutingOptions()).Run(new IterationBudget(2_000), cancel: TestContext.Current.CancellationToken);
        RoutingVerdict verdict = RoutingCheck.Judge(problem, plan);
        Assert.Equal(plan.Missing, verdict.Faults.Length);
        Assert.Equal(verdict.Cost, plan.Cost);
        return plan;
    }

    private static RoutingRequest Home(int place, int opens = 0, int closes = 100) => new(place, 1, 0, opens, closes);

    private static VehicleKind Nurse(int at = 0, int count = 1, int day = 0) => new(day, at, at, count, 100, 0, 200);

    private static RoutingProblem Line(ImmutableArray<RoutingRequest> homes, ImmutableArray<VehicleKind> nurses)
    {
        const int Places = 10;
        int[] matrix = [.. Enumerable.Range(0, Places * Places).Select(i => Math.Abs((i / Places) - (i % Places)))];
        return new RoutingProblem(Places, matrix, matrix, homes, nurses);
    }
}
