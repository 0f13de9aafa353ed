using System.Collections.Immutable;
using HomeLine.Planning.Routing;
using HomeLine.Planning.Routing.Supplies;

namespace HomeLine.Planning.Tests.Routing.Supplies;

/// <summary>People with their own tools and parts: small days against trying every order, and every plan against walking it.</summary>
public sealed class SupplySearchTests
{
    [Fact]
    public void A_small_day_is_as_short_as_trying_every_order_makes_it()
    {
        for (int seed = 1; seed <= 25; seed++)
        {
            SupplyProblem problem = Invented((ulong)seed, people: 2, requests: 5);

            SupplyPlan plan = new SupplySearch(problem, 1).Run(new IterationBudget(1_500), TestContext.Current.CancellationToken);

            (int leftOut, long duration) = EveryOrder(problem, Enumerable.Repeat(ImmutableArray<int>.Empty, 2).ToArray(), 0);
            Assert.Equal(leftOut, plan.LeftOut.Length);
            Assert.Equal(duration, plan.Duration);
        }
    }

    [Fact]
    public void A_plan_keeps_windows_skills_tools_and_parts_and_lasts_what_it_says()
    {
        for (int seed = 1; seed <= 10; seed++)
        {
            SupplyProblem problem = Invented((ulong)seed, people: 6, requests: 30);

            SupplyPlan plan = new SupplySearch(problem, (ulong)seed).Run(new IterationBudget(600), TestContext.Current.CancellationToken);

            long?[] durations = [.. plan.Rounds.Select(round => Walked(problem, round.Person, [.. round.Stops]))];
            Assert.DoesNotContain(null, durations);
            Assert.Equal(plan.Duration, durations.Sum());
            int[] made = [.. plan.Rounds.SelectMany(round => round.Stops).Where(stop => stop != SupplyPlan.Pass).Concat(plan.LeftOut).Order()];
            Assert.Equal(Enumerable.Range(0, 30), made);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_plan()
    {
        SupplyProblem problem = Invented(3, people: 5, requests: 25);
        string Written() => string.Join('|', new SupplySearch(problem, 5).Run(new IterationBudget(500)).Rounds.Select(round => $"{round.Person}:{string.Join(',', round.Stops)}"));

        Assert.Equal(Written(), Written());
    }

    [Fact]
    public void Different_kinds_of_parts_are_refused() =>
        Assert.Throws<ArgumentException>(() => new SupplySearch(Invented(1, 2, 5) with { People = [new SupplyPerson(1, 0, 600, 0, [1])] }, 1));

    // Every way of giving the next request to somebody at some position; complete before short.
    private static (int LeftOut, long Duration) EveryOrder(SupplyProblem problem, ImmutableArray<int>[] routes, int next)
    {
        if (next == problem.Requests.Length)
        {
            long sum = 0;
            for (int person = 0; person < routes.Length; person++)
            {
                if (Shortest(problem, person, routes[person]) is not { } duration) return (int.MaxValue, long.MaxValue);
                sum += duration;
            }

            return (next - routes.Sum(route => route.Length), sum);
        }

        (int, long) best = EveryOrder(problem, routes, next + 1);
        for (int person = 0; person < routes.Length; person++)
            for (int at = 0; at <= routes[person].Length; at++)
            {
                ImmutableArray<int>[] longer = [.. routes];
                longer[person] = routes[person].Insert(at, next);
                (int, long) found = EveryOrder(problem, longer, next + 1);
                if (found.CompareTo(best) < 0) best = found;
            }

        return best;
    }

    private static long? Shortest(SupplyProblem problem, int person, ImmutableArray<int> requests) =>
        Enumerable.Range(0, requests.Length + 1).Select(at => Walked(problem, person, [.. requests.Insert(at, SupplyPlan.Pass)])).Append(Walked(problem, person, [.. requests])).Min();

    // Departs at every minute in turn; null when no departure keeps the rules.
    private static long? Walked(SupplyProblem problem, int person, int[] stops)
    {
        if (stops.All(stop => stop == SupplyPlan.Pass)) return 0;
        SupplyPerson who = problem.People[person];
        int[] left = [.. who.Parts];
        bool supplied = false;
        foreach (int stop in stops)
        {
            supplied |= stop == SupplyPlan.Pass;
            if (stop == SupplyPlan.Pass) continue;
            SupplyRequest request = problem.Requests[stop];
            if (!request.Able.Contains(person) || (!supplied && (request.Tools & ~who.Tools) != 0)) return null;
            for (int kind = 0; kind < left.Length && !supplied; kind++)
                if ((left[kind] -= request.Parts[kind]) < 0) return null;
        }

        long? least = null;
        for (int departs = who.Opens; departs <= who.Closes; departs++)
            if (Back(problem, who, departs, stops) is { } back && (least is null || back - departs < least)) least = back - departs;
        return least;
    }

    private static int? Back(SupplyProblem problem, SupplyPerson who, int time, int[] stops)
    {
        int at = who.Home;
        foreach (int stop in stops)
        {
            (int place, int opens, int closes, int service) = stop == SupplyPlan.Pass
                ? (problem.Depot.Place, problem.Depot.Opens, problem.Depot.Closes, 0)
                : (problem.Requests[stop].Place, problem.Requests[stop].Opens, problem.Requests[stop].Closes, problem.Requests[stop].Service);
            time = Math.Max(time + problem.Travel[(at * problem.Places) + place], opens);
            if (time > closes) return null;
            time += service;
            at = place;
        }

        time += problem.Travel[(at * problem.Places) + who.Home];
        return time <= who.Closes ? time : null;
    }

    private static SupplyProblem Invented(ulong seed, int people, int requests)
    {
        var chance = new Chance(seed);
        int places = 1 + people + requests;
        (int X, int Y)[] at = [.. Enumerable.Range(0, places).Select(_ => (chance.Next(60), chance.Next(60)))];
        var travel = new int[places * places];
        for (int a = 0; a < places; a++)
            for (int b = 0; b < places; b++) travel[(a * places) + b] = Math.Abs(at[a].X - at[b].X) + Math.Abs(at[a].Y - at[b].Y);
        return new SupplyProblem(
            places,
            travel,
            new SupplyDepot(0, 0, 500),
            [.. Enumerable.Range(1, people).Select(home => new SupplyPerson(home, 0, 500, (ulong)chance.Next(4), [chance.Next(3), chance.Next(2)]))],
            [.. Enumerable.Range(1 + people, requests).Select(place => Request(chance, place, people))]);
    }

    private static SupplyRequest Request(Chance chance, int place, int people)
    {
        int opens = 20 + chance.Next(250);
        ImmutableArray<int> able = [.. Enumerable.Range(0, people).Where(_ => chance.Next(3) > 0)];
        return new SupplyRequest(place, 5 + chance.Next(15), opens, opens + 40 + chance.Next(200), able, (ulong)chance.Next(4) & (ulong)chance.Next(4), [chance.Next(2), chance.Next(2) * chance.Next(2)]);
    }
}
