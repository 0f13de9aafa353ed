using CsCheck;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests;

/// <summary>Weeks with slow hours and roads shut for a while: search, checker and bound see the same roads.</summary>
public sealed class PlannerHoursTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    [Fact]
    public void The_checker_accepts_every_plan_and_agrees_on_its_score() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.Rich(seed), seed);
            WeekPlan plan = Plan(problem, 60);
            CheckReport report = Checker.Check(problem, plan);
            Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
            Assert.Equal(report.Score, plan.Score);
        },
        iter: 200,
        threads: 1);

    [Theory]
    [InlineData(3, 21_001, 40)]
    [InlineData(4, 22_001, 40)]
    [InlineData(5, 23_001, 20)]
    public void Tiny_weeks_are_planned_as_well_as_can_be_and_the_bound_is_not_above(int tasks, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.TinyRich(seed, tasks), seed);
            PlanScore optimum = new FullEnumeration(problem).Best();
            WeekPlan plan = Plan(problem, 1_500);
            if (plan.Score != optimum)
                Assert.Fail($"Seed {seed}: planned {plan.Score}, possible {optimum}.\n{Shrinking.Smallest(problem, p => Plan(p, 1_500).Score != new FullEnumeration(p).Best())}");
            WeekBound bound = Planner.Bound(problem, plan, cancel: TestContext.Current.CancellationToken);
            Assert.All(bound.Tiers, t => Assert.True(t.AtLeast <= WeekBound.Amount(optimum, t.Tier)));
        }
    }

    [Fact]
    public void Delaying_a_later_visit_to_let_slow_hours_pass_never_saves_work()
    {
        int delayed = 0;
        for (int seed = 51_001; seed < 51_061; seed++)
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.Rich(seed), seed);
            // Without breaks: where one falls is decided by the search, gap by gap.
            problem = problem with { Nurses = [.. problem.Nurses.Select(n => n with { Shifts = [.. n.Shifts.Select(s => s with { LunchMinutes = 0 })] })] };
            WeekPlan plan = Plan(problem, 20);
            foreach (PlannedVisit visit in plan.Visits.Where(v => v.Second is null && plan.Visits.Any(o => o.Nurse == v.Nurse && o.Start < v.Start && o.Start / 1440 == v.Start / 1440)))
            {
                foreach (int minutes in (int[])[1, 7, 20, 45, 90])
                {
                    CheckReport then = Checker.Check(problem, plan with { Visits = [.. plan.Visits.Select(v => v == visit ? v with { Start = v.Start + minutes } : v)] });
                    if (!then.Accepted) continue;
                    delayed++;
                    Assert.True(then.Score.Work >= plan.Score.Work, $"{seed}: {visit.Id} {minutes} minutes later costs {then.Score.Work} instead of {plan.Score.Work}.");
                }
            }
        }

        Assert.True(delayed > 50, $"Only {delayed} delays were possible.");
    }

    [Fact]
    public void A_slow_hour_never_makes_a_plan_cheaper_or_allowed() => Seeds.Sample(
        seed =>
        {
            WeekProblem usual = RandomWeek.Rich(seed), slow = RandomWeek.WithHours(usual, seed) with { RoadChanges = [] };
            foreach (WeekProblem planned in new[] { usual, slow })
            {
                WeekPlan plan = Plan(planned, 20);
                CheckReport without = Checker.Check(usual, plan), with = Checker.Check(slow, plan);
                Assert.True(without.Score <= with.Score);
                if (with.Accepted) Assert.True(without.Accepted);
            }
        },
        iter: 100,
        threads: 1);

    [Fact]
    public void Nor_the_best_plan_of_a_tiny_week()
    {
        for (int seed = 24_001; seed < 24_021; seed++)
        {
            WeekProblem usual = RandomWeek.TinyRich(seed, 4), slow = RandomWeek.WithHours(usual, seed) with { RoadChanges = [] };
            Assert.True(new FullEnumeration(usual).Best() <= new FullEnumeration(slow).Best());
        }
    }

    [Fact]
    public void A_visit_that_the_morning_makes_late_is_planned_later()
    {
        // From home at 08:00, half an hour away at usual speed: at half of it until 09:00 she is there at 09:00.
        WeekProblem problem = SmallWeek.Of([SmallWeek.Nurse("N1", 0)], [SmallWeek.Patient("P1", 3)], [SmallWeek.Task("T1", "P1") with { StartSpans = [new Span(SmallWeek.At(0, 8), SmallWeek.At(0, 9, 15))] }], 1);
        WeekProblem slow = problem with { SlowHours = [new SlowHours(SmallWeek.At(0, 7), SmallWeek.At(0, 9), 50)] };
        Assert.Equal(SmallWeek.At(0, 8, 30), Plan(problem, 10).Visits.Single().Start);
        Assert.Equal(SmallWeek.At(0, 9), Plan(slow, 10).Visits.Single().Start);
        Assert.Equal(60 + 30, Checker.Check(slow, Plan(slow, 10)).Figures.DrivingMinutes);

        // Where the home receives longer, she lets the slow hour pass and drives half an hour less.
        WeekProblem patient = slow with { Tasks = [SmallWeek.Task("T1", "P1")] };
        Assert.Equal(SmallWeek.At(0, 9, 30), Plan(patient, 10).Visits.Single().Start);
        Assert.Equal(30 + 30, Checker.Check(patient, Plan(patient, 10)).Figures.DrivingMinutes);
    }

    [Fact]
    public void A_home_behind_a_shut_road_is_visited_before_or_after()
    {
        WeekProblem problem = SmallWeek.Of([SmallWeek.Nurse("N1", 0)], [SmallWeek.Patient("P1", 3)], [SmallWeek.Task("T1", "P1")], 1);
        WeekProblem shut = problem with { RoadChanges = [new RoadChange(SmallWeek.At(0, 8), SmallWeek.At(0, 12), new NoWay())] };
        WeekPlan plan = Plan(shut, 10);
        Assert.Equal(SmallWeek.At(0, 12, 30), plan.Visits.Single().Start);
        Assert.Equal([], Checker.Check(shut, plan).Findings);
    }

    [Fact]
    public void Broken_days_and_urgent_needs_are_answered_on_the_same_roads() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.Rich(seed), seed);
            WeekPlan plan = Plan(problem, 30);
            int now = Math.Min(1440 + 360, (problem.DayCount * 1440) - 1);
            WeekProblem told = problem with
            {
                Now = now,
                Published = plan with { Visits = [.. plan.Visits.Select(v => v with { Promise = v.Start < now ? PromiseState.Done : PromiseState.Told, ToldFrom = v.Start })] },
            };
            MendedWeek mended = Planner.Mend(told, [new Trouble.NurseOut(told.Nurses[seed % told.Nurses.Length].Id, 1440, 2880)], new MendOptions(1, 40), TestContext.Current.CancellationToken);
            Assert.Equal([], mended.Findings.Where(f => f.Reason.Code != ReasonCode.BreakMissing).Select(f => f.Reason.Sentence));
            CareTask urgent = told.Tasks[0] with { Id = "urgent", Opens = now, LateFrom = now + 300, HardLatest = int.MaxValue, Safety = true, After = null, Together = null, StartSpans = [] };
            foreach (UrgentAnswer answer in new ReadyWeek(told).Options(new UrgentNeed(urgent.Patient, [urgent.Id], []), [urgent]).Answers)
            {
                CheckReport before = Checker.Check(told, told.Published!), after = Checker.Check(told with { Tasks = [.. told.Tasks, urgent] }, answer.Plan);
                Assert.Equal([], after.Findings.Select(f => f.Reason.Sentence).Except(before.Findings.Select(f => f.Reason.Sentence)));
            }
        },
        iter: 80,
        threads: 1);

    [Theory]
    [InlineData(100, 100, 50, "end before they begin")]
    [InlineData(100, 200, 0, "a speed of 0 percent")]
    [InlineData(100, 200, 101, "a speed of 101 percent")]
    [InlineData(590, 700, 50, "overlap")]
    public void Slow_hours_that_make_no_sense_are_refused(int from, int to, int percent, string words)
    {
        WeekProblem problem = SmallWeek.Of([SmallWeek.Nurse("N1", 0)], [SmallWeek.Patient("P1", 3)], [SmallWeek.Task("T1", "P1")], 1);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Plan(problem with { SlowHours = [new SlowHours(600, 660, 80), new SlowHours(from, to, percent)] }, 1));
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    private static WeekPlan Plan(WeekProblem problem, int rounds) => Planner.Plan(problem, new PlanOptions(1, rounds), cancel: TestContext.Current.CancellationToken);

    private sealed class NoWay : ITravelTimes
    {
        public int Minutes(int from, int to) => ITravelTimes.Unreachable;
    }
}
