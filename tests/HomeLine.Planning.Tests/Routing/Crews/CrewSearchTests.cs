using System.Collections.Immutable;
using CsCheck;
using HomeLine.Planning.Routing;
using HomeLine.Planning.Routing.Crews;

namespace HomeLine.Planning.Tests.Routing.Crews;

/// <summary>Visits for two, soft windows: cases by hand, and the plan's figures against a walk of the test's own. Places lie on a line.</summary>
public sealed class CrewSearchTests
{
    [Fact]
    public void Two_people_start_together_when_the_later_one_is_there()
    {
        // Both drive 3 there and 3 back; nobody is late.
        CrewPlan plan = Best(new CrewProblem(4, Line(4), 2, [new CrewVisit(3, 0, 10, Part(5, 0), Part(5, 1))]));

        Assert.Equal(12, plan.Cost);
        Assert.Equal(plan.Stops[0].FirstStart, plan.Stops[0].SecondStart);
    }

    [Fact]
    public void The_second_part_starts_within_its_gap()
    {
        CrewPlan plan = Best(new CrewProblem(4, Line(4), 2, [new CrewVisit(3, 0, 100, Part(5, 0), Part(5, 1), LeastGap: 20, MostGap: 30)]));

        Assert.InRange(plan.Stops[0].SecondStart - plan.Stops[0].FirstStart, 20, 30);
    }

    [Fact]
    public void Lateness_is_paid_once_more_for_the_largest()
    {
        // One person, 3 there, window until 1: 2 late, counted twice, and 6 driven.
        CrewPlan plan = Best(new CrewProblem(4, Line(4), 1, [new CrewVisit(3, 0, 1, Part(5, 0))]));

        Assert.Equal(6 + 2 + 2, plan.Cost);
    }

    [Fact]
    public void A_visit_nobody_can_make_is_refused() =>
        Assert.Throws<ArgumentException>(() => Best(new CrewProblem(4, Line(4), 1, [new CrewVisit(3, 0, 1, Part(5, 0), Part(5, 0))])));

    [Fact]
    public void The_cost_of_a_plan_is_that_of_driving_it() => Gen.Int[1, 100_000].Sample(
        seed =>
        {
            CrewProblem problem = Invented((ulong)seed);
            CrewPlan plan = new CrewSearch(problem, (ulong)seed).Run(new IterationBudget(3_000));
            Assert.Equal(Enumerable.Range(0, problem.Visits.Length), plan.Stops.Select(stop => stop.Visit).Order());
            Assert.Equal(plan.Travel, Enumerable.Range(0, problem.Caregivers).Sum(caregiver => Drive(problem, plan, caregiver)));
            int[] late = [.. plan.Stops.SelectMany(stop => Late(problem.Visits[stop.Visit], stop))];
            Assert.Equal(plan.Lateness, late.Sum());
            Assert.Equal(plan.LargestLateness, late.Max());
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void The_same_seed_gives_the_same_plan()
    {
        string first = Written(3);

        Assert.Equal(first, Written(3));
    }

    private static string Written(ulong seed) =>
        string.Join(' ', new CrewSearch(Invented(8), seed).Run(new IterationBudget(5_000)).Stops.Select(stop => $"{stop.Visit}:{stop.First}@{stop.FirstStart}"));

    private static CrewPlan Best(CrewProblem problem) => new CrewSearch(problem, 1).Run(new IterationBudget(2_000), TestContext.Current.CancellationToken);

    private static CrewPart Part(int duration, params ImmutableArray<int> able) => new(duration, able);

    private static int[] Line(int places) => [.. Enumerable.Range(0, places * places).Select(i => Math.Abs((i / places) - (i % places)))];

    private static IEnumerable<int> Late(CrewVisit visit, CrewStop stop)
    {
        yield return Math.Max(0, stop.FirstStart - visit.Closes);
        if (stop.Second >= 0) yield return Math.Max(0, stop.SecondStart - visit.Closes);
    }

    private static long Drive(CrewProblem problem, CrewPlan plan, int caregiver)
    {
        int at = 0, free = 0;
        long travel = 0;
        foreach (CrewStop stop in plan.Stops.Where(stop => stop.First == caregiver || stop.Second == caregiver))
        {
            CrewVisit visit = problem.Visits[stop.Visit];
            bool first = stop.First == caregiver;
            int start = first ? stop.FirstStart : stop.SecondStart, leg = problem.Travel[(at * problem.Places) + visit.Place];
            Assert.True(start >= free + leg && start >= visit.Opens);
            Assert.Contains(caregiver, first ? visit.First.Able : visit.Second!.Able);
            travel += leg;
            free = start + (first ? visit.First : visit.Second!).Duration;
            at = visit.Place;
        }

        return travel + problem.Travel[at * problem.Places];
    }

    private static CrewProblem Invented(ulong seed)
    {
        var chance = new Chance(seed);
        int homes = 5 + chance.Next(30), caregivers = 3 + chance.Next(4);
        ImmutableArray<CrewVisit> visits = [.. Enumerable.Range(1, homes).Select(place =>
        {
            int opens = chance.Next(300), gap = chance.Next(20), split = 1 + chance.Next(caregivers - 1);
            return new CrewVisit(
                place,
                opens,
                opens + 60,
                Part(5 + chance.Next(20), [.. Enumerable.Range(0, split)]),
                chance.Next(3) == 0 ? Part(5 + chance.Next(20), [.. Enumerable.Range(split, caregivers - split)]) : null,
                gap,
                gap + chance.Next(10));
        })];
        return new CrewProblem(homes + 1, Line(homes + 1), caregivers, visits);
    }
}
