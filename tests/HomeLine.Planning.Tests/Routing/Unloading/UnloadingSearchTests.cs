using System.Collections.Immutable;
using HomeLine.Planning.Routing;
using HomeLine.Planning.Routing.Unloading;

namespace HomeLine.Planning.Tests.Routing.Unloading;

/// <summary>Rounds that unload on the way: the cut into trips against trying every cut, and whole plans against driving them.</summary>
public sealed class UnloadingSearchTests
{
    [Fact]
    public void A_round_is_cut_where_it_costs_least()
    {
        for (int seed = 1; seed <= 50; seed++)
        {
            UnloadingProblem problem = Invented((ulong)seed);
            int[] order = [.. Enumerable.Range(0, 7)];
            var trips = new UnloadingTrips(problem);

            int[] places = trips.Places(order);

            Assert.Equal(EveryCut(problem, order), trips.Of(order).Travel);
            Assert.Equal(trips.Of(order).Travel, Driven(problem, places));
        }
    }

    [Fact]
    public void A_plan_visits_everybody_on_the_days_of_one_pattern_at_the_cost_of_driving_it()
    {
        for (int seed = 1; seed <= 10; seed++)
        {
            UnloadingProblem problem = Invented((ulong)seed);
            UnloadingPlan plan = new UnloadingSearch(problem, (ulong)seed).Run(new IterationBudget(400), TestContext.Current.CancellationToken);
            Assert.Equal(plan.Cost, plan.Rounds.Sum(round => Driven(problem, [.. round.Places])));
            foreach (UnloadingCustomer customer in problem.Customers)
                Assert.Contains(plan.Rounds.Where(round => round.Places.Contains(customer.Place)).Sum(round => 1 << round.Day), customer.Patterns);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_plan()
    {
        UnloadingProblem problem = Invented(3);
        string Written() => string.Join('|', new UnloadingSearch(problem, 5).Run(new IterationBudget(300)).Rounds.Select(round => $"{round.Day}:{string.Join(',', round.Places)}"));

        Assert.Equal(Written(), Written());
    }

    [Fact]
    public void A_customer_above_the_capacity_is_refused() =>
        Assert.Throws<ArgumentException>(() => new UnloadingSearch(Invented(1) with { Capacity = 1 }, 1));

    private static long Driven(UnloadingProblem problem, int[] places)
    {
        int load = 0;
        foreach (int place in places.Skip(1))
        {
            load = problem.Facilities.Contains(place) ? 0 : load + (problem.Customers.FirstOrDefault(customer => customer.Place == place)?.Demand ?? 0);
            Assert.True(load <= problem.Capacity, "too full");
        }

        Assert.Equal(0, load);
        return places.Skip(1).Select((place, i) => (long)problem.Travel[(places[i] * problem.Places) + place]).Sum();
    }

    private static int EveryCut(UnloadingProblem problem, int[] order)
    {
        int Leg(int a, int b) => problem.Travel[(a * problem.Places) + b];
        int best = int.MaxValue;
        for (int cuts = 0; cuts < 1 << (order.Length - 1); cuts++)
        {
            int cost = 0, load = 0, at = 0;
            bool fits = true;
            for (int i = 0; i < order.Length; i++)
            {
                UnloadingCustomer customer = problem.Customers[order[i]];
                bool cut = i > 0 && (cuts >> (i - 1) & 1) != 0;
                cost += cut ? problem.Facilities.Min(facility => Leg(at, facility) + Leg(facility, customer.Place)) : Leg(at, customer.Place);
                load = (cut ? 0 : load) + customer.Demand;
                fits &= load <= problem.Capacity;
                at = customer.Place;
            }

            if (fits) best = Math.Min(best, cost + problem.Facilities.Min(facility => Leg(at, facility) + Leg(facility, 0)));
        }

        return best;
    }

    private static UnloadingProblem Invented(ulong seed)
    {
        var chance = new Chance(seed);
        int places = 11;
        ImmutableArray<UnloadingCustomer> customers = [.. Enumerable.Range(1, 8).Select(place => new UnloadingCustomer(place, 2 + chance.Next(5), 5, place % 3 == 0 ? [0b11] : [0b01, 0b10]))];
        return new UnloadingProblem(places, [.. Enumerable.Range(0, places * places).Select(i => i / places == i % places ? 0 : 3 + chance.Next(20))], [9, 10], customers, 2, 2, 12, 500);
    }
}
