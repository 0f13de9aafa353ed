using CsCheck;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Reserve;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Reserve;

/// <summary>Laws of a week that keeps free time, on invented weeks with a bit of everything and a slot asked for every nurse.</summary>
public sealed class ReserveLawTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];
    private static readonly ReserveRules Much = new(1, 75);

    [Fact]
    public void It_is_paid_with_work_and_never_with_care() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Week(seed);
            var options = new PlanOptions((ulong)seed, 60);
            ReservedWeek reserved = Planner.PlanWithReserve(problem, options, Much);
            PlanScore without = Planner.Plan(problem, options).Score, with = reserved.Plan.Score;
            Assert.True(Care(with).CompareTo(Care(without)) <= 0, $"{without} became {with}");
            Assert.True(reserved.Missing <= reserved.MissingWithout || Care(with).CompareTo(Care(without)) < 0);
        },
        iter: 150,
        threads: 1);

    [Fact]
    public void The_checker_accepts_what_is_left_and_agrees_on_its_score() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Week(seed);
            ReservedWeek reserved = Planner.PlanWithReserve(problem, new PlanOptions((ulong)seed, 60), Much);
            CheckReport report = Checker.Check(problem, reserved.Plan);
            Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
            Assert.Equal(report.Score, reserved.Plan.Score);
            Assert.Equal(DaySlots.Of(problem, reserved.Plan.Visits, Much), reserved.Days);
            Assert.All(reserved.Plan.Unmet, u => Assert.NotEmpty(u.Reasons));
        },
        iter: 150,
        threads: 1);

    [Fact]
    public void Without_a_reserve_in_policy_the_plan_is_the_same_to_the_letter() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Week(seed);
            var options = new PlanOptions((ulong)seed, 40, Islands: 2);
            Assert.Equal(Written(Planner.Plan(problem, options)), Written(Planner.PlanWithReserve(problem, options, new ReserveRules(0, 75)).Plan));
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void The_same_seed_gives_the_same_plan() => Seeds.Sample(
        seed =>
        {
            var options = new PlanOptions((ulong)seed, 40, Islands: 2);
            Assert.Equal(Written(Planner.PlanWithReserve(Week(seed), options, Much).Plan), Written(Planner.PlanWithReserve(Week(seed), options, Much).Plan));
        },
        iter: 30,
        threads: 1);

    [Fact]
    public void A_warm_start_is_never_worse_in_care_then_slots_then_the_rest() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Week(seed);
            WeekPlan published = Planner.PlanWithReserve(problem, new PlanOptions(1, 40), Much).Plan;
            ReservedWeek again = Planner.PlanWithReserve(problem with { Published = published }, new PlanOptions(2, 30), Much);
            int care = Care(again.Plan.Score).CompareTo(Care(published.Score)), before = DaySlots.Of(problem, published.Visits, Much).Sum(d => d.Missing);
            Assert.True(care < 0 || (care == 0 && (again.Missing < before || (again.Missing == before && again.Plan.Score <= published.Score))));
        },
        iter: 60,
        threads: 1);

    /// <summary>Of every three weeks one has roads by the hour and one drives to drop points.</summary>
    private static WeekProblem Week(int seed) => (seed % 3) switch
    {
        0 => RandomWeek.WithHours(RandomWeek.Rich(seed), seed),
        1 => RandomWeek.WithDrops(RandomWeek.Rich(seed), seed),
        _ => RandomWeek.Rich(seed),
    };

    private static PlanScore Care(PlanScore score) => score with { Work = 0, People = 0, UnusedLife = 0 };

    private static string Written(WeekPlan plan) => string.Join('\n', plan.Visits.Select(v => $"{v.Id} {v.Nurse} {v.Second} {v.Start} {v.Minutes} {string.Join(',', v.Tasks)}")) + plan.Score
        + string.Join('\n', plan.Unmet.Select(u => u.Task + string.Join(';', u.Reasons) + string.Join(';', u.Relaxations)));
}
