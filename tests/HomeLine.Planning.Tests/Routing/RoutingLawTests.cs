using CsCheck;
using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>Laws of the routing search on invented problems with a bit of everything.</summary>
public sealed class RoutingLawTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    [Fact]
    public void After_every_move_the_checker_finds_no_fault_and_the_same_cost() => Seeds.Sample(
        seed =>
        {
            RoutingProblem problem = InventedTown.Rich((ulong)seed, 6 + (seed % 20));
            var model = new RoutingModel(problem);
            var store = new PlanStore(model);
            var search = new RoutingSearch(problem, new RoutingOptions { Seed = (ulong)seed })
            {
                AfterMove = state =>
                {
                    store.Keep(state);
                    RoutingPlan plan = store.Plan();
                    RoutingVerdict verdict = RoutingCheck.Judge(problem, plan);
                    Assert.Equal(plan.Missing, verdict.Faults.Count(fault => !fault.Contains("carries", StringComparison.Ordinal)));
                    Assert.Equal(state.Overload > 0, verdict.Faults.Any(fault => fault.Contains("carries", StringComparison.Ordinal)));
                    Assert.Equal(verdict.Cost, plan.Cost);
                },
            };
            search.Run(new IterationBudget(150));
        },
        iter: 200,
        threads: 1);

    [Fact]
    public void The_same_seed_gives_the_same_plan() => Seeds.Sample(
        seed => Assert.Equal(Written(Plan(seed)), Written(Plan(seed))),
        iter: 20,
        threads: 1);

    [Fact]
    public void A_warm_start_is_never_worse_than_the_plan_it_starts_from() => Seeds.Sample(
        seed =>
        {
            RoutingPlan first = Plan(seed);
            RoutingProblem problem = InventedTown.Rich((ulong)seed, 25);
            RoutingPlan again = new RoutingSearch(problem, new RoutingOptions { Seed = 7 }).Run(new IterationBudget(30), first);
            Assert.True((again.Missing, again.Cost).CompareTo((first.Missing, first.Cost)) <= 0);
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void A_cancelled_search_returns_a_plan()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        RoutingProblem problem = InventedTown.Simple(3, 60, vehicles: 60);

        RoutingPlan plan = new RoutingSearch(problem, new RoutingOptions()).Run(new IterationBudget(1_000_000), cancel: cancelled.Token);

        Assert.Empty(RoutingCheck.Judge(problem, plan).Faults);
    }

    [Fact]
    public void Near_positions_alone_give_valid_plans_too()
    {
        RoutingProblem problem = InventedTown.Simple(4, 80, vehicles: 80);

        RoutingPlan plan = new RoutingSearch(problem, new RoutingOptions { NearFrom = 10, Near = 12 }).Run(new IterationBudget(3_000), cancel: TestContext.Current.CancellationToken);

        Assert.Empty(RoutingCheck.Judge(problem, plan).Faults);
        Assert.Equal(RoutingCheck.Judge(problem, plan).Cost, plan.Cost);
    }

    [Fact]
    public void A_large_town_keeps_its_numbers_though_the_search_renumbers_its_places()
    {
        RoutingProblem problem = InventedTown.Simple(5, 420, vehicles: 420);

        RoutingPlan plan = new RoutingSearch(problem, new RoutingOptions()).Run(new IterationBudget(500), cancel: TestContext.Current.CancellationToken);

        Assert.Empty(RoutingCheck.Judge(problem, plan).Faults);
        Assert.Equal(RoutingCheck.Judge(problem, plan).Cost, plan.Cost);
    }

    [Fact]
    public void In_a_large_town_the_checker_agrees_after_every_finished_move_though_many_are_given_up()
    {
        RoutingProblem problem = InventedTown.Simple(6, Cooling.Large + 10, vehicles: Cooling.Large);
        var store = new PlanStore(new RoutingModel(problem));
        int finished = 0;
        var search = new RoutingSearch(problem, new RoutingOptions())
        {
            AfterMove = state =>
            {
                finished++;
                store.Keep(state);
                Assert.Equal(RoutingCheck.Judge(problem, store.Plan()).Cost, store.Plan().Cost);
            },
        };

        search.Run(new IterationBudget(1_000), cancel: TestContext.Current.CancellationToken);

        Assert.InRange(finished, 1, 999);
    }

    [Fact]
    public void A_position_never_adds_less_than_its_floor_whatever_the_matrix() => Seeds.Sample(
        seed =>
        {
            RoutingProblem town = InventedTown.Simple((ulong)seed, 12);
            var chance = new Chance((ulong)seed);
            // Roads of their own in both directions, and no triangle inequality.
            int[] roads = [.. town.Cost.Select(way => way + chance.Next(60))];
            var model = new RoutingModel(town with { Cost = roads });
            NearRequest[][] lists = NearRequest.Lists(model, 5);
            for (int request = 0; request < lists.Length; request++)
                foreach (NearRequest near in lists[request])
                    for (int third = 0; third < model.Places; third++)
                    {
                        int here = model.Of[request].Place, there = model.Of[near.Other].Place, cutBehind = Leg(there, third), cutBefore = Leg(third, there);
                        Assert.True(near.Into + Leg(here, third) - cutBehind >= near.FloorBehind - (2 * cutBehind));
                        Assert.True(Leg(third, here) + near.OutOf - cutBefore >= near.FloorBefore - (2 * cutBefore));
                    }

            int Leg(int from, int to) => model.Cost[(from * model.Places) + to];
        },
        iter: 50,
        threads: 1);

    private static RoutingPlan Plan(int seed) =>
        new RoutingSearch(InventedTown.Rich((ulong)seed, 25), new RoutingOptions { Seed = (ulong)seed }).Run(new IterationBudget(400));

    private static string Written(RoutingPlan plan) => string.Join(" | ", plan.Routes.Select(route => $"{route.Kind}: {string.Join(' ', route.Requests)}")) + $" = {plan.Cost}";
}
