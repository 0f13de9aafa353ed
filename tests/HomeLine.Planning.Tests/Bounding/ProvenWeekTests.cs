using HomeLine.Benchmarks.Weeks;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Bounding;

/// <summary>
/// Twenty invented weeks of up to twelve patients: the planner reaches the best score there is. The command <c>proof</c> of the benchmarks does the same with up to twenty
/// patients and longer.
/// </summary>
public sealed class ProvenWeekTests
{
    private const int Weeks = 20, Rounds = 50_000;

    private static readonly BoundOptions Modest = new(Labels: 30_000, Columns: 10_000, Effort: 1);

    [Fact]
    public void The_planner_reaches_the_proven_optimum_of_small_weeks()
    {
        List<string> missed = [], open = [];
        int proven = 0;
        for (int seed = 1; seed <= Weeks; seed++)
        {
            int people = 4 + (seed * 7 % 9);
            WeekProblem week = InventedWeek.Of(2 + (people / 6), people, seed);
            WeekPlan plan = Plan(week, 1);
            WeekBound bound = Bound(week, plan);
            if (bound.Optimal)
            {
                proven++;
                continue;
            }

            WeekPlan other = Plan(week, 2);
            if (other.Score < plan.Score && Bound(week, other).Optimal)
            {
                proven++;
                missed.Add($"{seed}: planned {plan.Score}, proven {other.Score}");
            }
            else open.Add($"{seed}: {bound.Open}");
        }

        Assert.True(proven >= Weeks * 3 / 4, $"Only {proven} of {Weeks} weeks are proven.\n{string.Join('\n', open)}");
        Assert.True(missed.Count <= 1, string.Join('\n', missed));
    }

    [Fact]
    public void A_week_of_sixty_patients_has_a_bound_near_its_plan()
    {
        WeekProblem week = InventedWeek.Of(8, 60, 1);
        WeekPlan plan = Planner.Plan(week, new PlanOptions(1, 8_000), cancel: TestContext.Current.CancellationToken);
        WeekBound bound = Planner.Bound(week, plan, new BoundOptions(Rounds: 80, Labels: 20_000, Columns: 0, NearPatients: 4), TestContext.Current.CancellationToken);
        Assert.Equal(Tier.Work, bound.Open!.Tier);
        Assert.InRange(bound.Open.GapPercent, 0, 12);
    }

    private static WeekBound Bound(WeekProblem week, WeekPlan plan) => Planner.Bound(week, plan, Modest, TestContext.Current.CancellationToken);

    private static WeekPlan Plan(WeekProblem week, ulong seed) =>
        Planner.Plan(week, new PlanOptions(seed, Rounds), cancel: TestContext.Current.CancellationToken);
}
