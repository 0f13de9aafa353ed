using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Proof;

/// <summary>
/// Tiny weeks as constraints for a general solver (OR-Tools CP-SAT), against the full enumeration and against the planner. The three share no code, and each plan
/// goes through the checker.
/// </summary>
public sealed class ExactWeekTests
{
    [Theory]
    [InlineData(3, 5_001, 12)]
    [InlineData(4, 6_001, 10)]
    [InlineData(5, 7_001, 5)]
    public void The_solver_and_the_full_enumeration_find_the_same_best_score(int tasks, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.TinyRich(seed, tasks);
            WeekPlan solved = new ExactWeek(problem).Best();
            CheckReport report = Checker.Check(problem, solved);
            Assert.Equal([], report.Findings.Select(f => $"{seed}: {f.Reason.Sentence}"));
            Assert.Equal((seed, report.Score), (seed, solved.Score));
            PlanScore tried = new FullEnumeration(problem).Best();
            if (solved.Score != tried)
            {
                Assert.Fail($"Seed {seed}: the solver finds {solved.Score}, the enumeration {tried}.\n"
                    + Shrinking.Smallest(problem, p => new ExactWeek(p).Best().Score != new FullEnumeration(p).Best()));
            }
        }
    }

    [Theory]
    [InlineData(4, 8_001, 10)]
    [InlineData(5, 9_001, 4)]
    public void With_two_person_visits_and_chains_in_minutes_the_planner_is_as_good_as_the_solver(int tasks, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.TinyTied(seed, tasks);
            WeekPlan solved = new ExactWeek(problem).Best();
            CheckReport report = Checker.Check(problem, solved);
            Assert.Equal([], report.Findings.Select(f => $"{seed}: {f.Reason.Sentence}"));
            Assert.Equal((seed, report.Score), (seed, solved.Score));
            PlanScore planned = Plan(problem).Score;
            if (planned != solved.Score)
            {
                Assert.Fail($"Seed {seed}: planned {planned}, possible {solved.Score}.\n"
                    + Shrinking.Smallest(problem, p => Plan(p).Score != new ExactWeek(p).Best().Score));
            }
        }
    }

    private static WeekPlan Plan(WeekProblem problem) =>
        Planner.Plan(problem, new PlanOptions(1, 1_500), cancel: TestContext.Current.CancellationToken);
}
