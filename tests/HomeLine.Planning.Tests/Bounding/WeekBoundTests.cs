using HomeLine.Planning.Bounding;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Bounding;

/// <summary>What the bound says of tiny weeks, beside their true optimum.</summary>
public sealed class WeekBoundTests
{
    [Theory]
    [InlineData(3, 11_001, 60)]
    [InlineData(4, 12_001, 60)]
    [InlineData(5, 13_001, 40)]
    [InlineData(6, 14_001, 15)]
    public void The_bound_never_exceeds_the_optimum_and_mostly_proves_it(int tasks, int firstSeed, int weeks)
    {
        int proven = 0;
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.TinyRich(seed, tasks);
            PlanScore optimum = new FullEnumeration(problem).Best();
            if (Bound(problem) is { Optimal: true }) proven++;
            string? wrong = Wrong(problem, optimum);
            if (wrong is not null) Assert.Fail($"Seed {seed}: {wrong}.\n{Shrinking.Smallest(problem, p => Wrong(p, new FullEnumeration(p).Best()) is not null)}");
        }

        Assert.True(proven >= 0.9 * weeks, $"Only {proven} of {weeks} are proven.");
    }

    private static string? Wrong(WeekProblem problem, PlanScore optimum)
    {
        WeekBound bound = Bound(problem);
        foreach (TierBound tier in bound.Tiers)
        {
            long best = WeekBound.Amount(optimum, tier.Tier);
            if (tier.AtLeast > best) return $"{tier} is above the optimum {optimum}";
            if (best < tier.Planned) return null;
        }

        return null;
    }

    private static WeekBound Bound(WeekProblem problem)
    {
        CancellationToken cancel = TestContext.Current.CancellationToken;
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 300), cancel: cancel);
        return Planner.Bound(problem, plan, cancel: cancel);
    }
}
