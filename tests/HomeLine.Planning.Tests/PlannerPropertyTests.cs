using CsCheck;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests;

/// <summary>Laws every plan keeps, on invented weeks with a bit of everything.</summary>
public sealed class PlannerPropertyTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    [Fact]
    public void The_checker_accepts_every_plan_and_agrees_on_its_score() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan plan = Planner.Plan(problem, new PlanOptions((ulong)seed, 60));
            CheckReport report = Checker.Check(problem, plan);
            Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
            Assert.Equal(report.Score, plan.Score);
        },
        iter: 300,
        threads: 1);

    [Fact]
    public void The_same_seed_gives_the_same_plan() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            var options = new PlanOptions((ulong)seed, 40);
            Assert.Equal(Written(Planner.Plan(problem, options)), Written(Planner.Plan(RandomWeek.Rich(seed), options)));
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void A_warm_start_is_never_worse_than_the_plan_it_starts_from() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan published = Planner.Plan(problem, new PlanOptions(1, 30));
            WeekPlan again = Planner.Plan(problem with { Published = published }, new PlanOptions(2, 30));
            Assert.True(again.Score <= published.Score);
            Assert.True(Checker.Check(problem with { Published = published }, again).Accepted);
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void A_warm_start_without_rounds_is_never_worse_either() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan published = Planner.Plan(problem, new PlanOptions(1, 200));
            Assert.True(Planner.Plan(problem with { Published = published }, new PlanOptions(2, 0)).Score <= published.Score);
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void A_week_later_the_same_problem_has_the_same_plan() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan later = Planner.Plan(problem with { FirstDay = problem.FirstDay.PlusWeeks(1) }, new PlanOptions(3, 40));
            Assert.Equal(Written(Planner.Plan(problem, new PlanOptions(3, 40))), Written(later));
        },
        iter: 20,
        threads: 1);

    [Fact]
    public void When_every_visit_is_frozen_nothing_changes() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan published = Planner.Plan(problem, new PlanOptions(1, 30));
            WeekProblem frozen = problem with
            {
                Published = published,
                FrozenVisits = [.. published.Visits.Select(v => v.Id)],
                Tasks = [.. problem.Tasks.Where(t => published.Visits.Any(v => v.Tasks.Contains(t.Id)))],
            };
            Assert.Equal(published.Visits.Select(Written), Planner.Plan(frozen, new PlanOptions(9, 30)).Visits.Select(Written));
        },
        iter: 40,
        threads: 1);

    [Fact]
    public void When_some_visits_are_frozen_they_stay_and_the_rest_is_planned_around_them() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan published = Planner.Plan(problem, new PlanOptions(1, 10));
            WeekProblem frozen = problem with
            {
                Now = 800,
                Published = published with
                {
                    Visits = [.. published.Visits.Select((v, i) => v with { Promise = v.Start < 800 || i % 3 == 0 ? PromiseState.Frozen : v.Promise })],
                },
            };
            WeekPlan plan = Planner.Plan(frozen, new PlanOptions(9, 40));
            CheckReport report = Checker.Check(frozen, plan);
            Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
            Assert.Equal(report.Score, plan.Score);
        },
        iter: 150,
        threads: 1);

    [Fact]
    public void A_cancelled_search_still_returns_a_plan_that_keeps_every_rule()
    {
        using var cancel = new CancellationTokenSource();
        var progress = new Report(_ => cancel.Cancel());
        WeekPlan plan = Planner.Plan(DemoWeek.Problem, new PlanOptions(1, 1_000), progress, cancel.Token);
        Assert.Equal(1, progress.Count);
        Assert.True(Checker.Check(DemoWeek.Problem, plan).Accepted);
    }

    [Fact]
    public void Progress_never_reports_a_worse_plan_than_before()
    {
        var scores = new List<PlanScore>();
        Planner.Plan(DemoWeek.Problem, new PlanOptions(1, 300), new Report(p => scores.Add(p.Best)), TestContext.Current.CancellationToken);
        Assert.Equal(50, scores.Count);
        Assert.Equal(scores.OrderDescending(), scores);
    }

    [Fact]
    public void Nonsense_never_makes_the_checker_throw() => Gen.Select(Seeds, Gen.Int, Gen.Int[0, 20], Gen.String).Sample(
        (seed, start, which, text) =>
        {
            WeekProblem problem = RandomWeek.Rich(seed);
            WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 0));
            PlannedVisit visit = which < plan.Visits.Length
                ? plan.Visits[which]
                : new PlannedVisit { Id = text, Patient = text, Nurse = text, Start = 0, Minutes = 0, Tasks = default };
            PlannedVisit[] strange =
            [
                visit with { Start = start },
                visit with { Minutes = start },
                visit with { Nurse = text, Second = text },
                visit with { Tasks = [text, text] },
                visit with { Patient = text },
                visit with { Tasks = default },
            ];
            foreach (PlannedVisit one in strange) Checker.Check(problem, new WeekPlan(plan.Visits.Add(one), default, default));
        },
        iter: 100,
        threads: 1);

    private static string Written(WeekPlan plan) => string.Join('\n', plan.Visits.Select(Written)) + plan.Score
        + string.Join('\n', plan.Unmet.Select(u => u.Task + string.Join(';', u.Reasons) + string.Join(';', u.Relaxations)));

    private static string Written(PlannedVisit v) => $"{v.Id} {v.Nurse} {v.Second} {v.Start} {v.Minutes} {string.Join(',', v.Tasks)}";

    private sealed class Report(Action<PlanProgress> then) : IProgress<PlanProgress>
    {
        public int Count { get; private set; }

        void IProgress<PlanProgress>.Report(PlanProgress value)
        {
            Count++;
            then(value);
        }
    }
}
