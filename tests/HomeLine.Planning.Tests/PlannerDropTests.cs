using CsCheck;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests;

/// <summary>Stops at drop points: where they are, what they cost, and that search and checker read them alike.</summary>
public sealed class PlannerDropTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    [Fact]
    public void The_checker_accepts_every_plan_and_agrees_on_its_score() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithDrops(RandomWeek.Rich(seed), seed);
            if (seed % 2 == 0) problem = RandomWeek.WithHours(problem, seed);
            WeekPlan plan = Plan(problem, 60);
            CheckReport report = Checker.Check(problem, plan);
            Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
            Assert.Equal(report.Score, plan.Score);
        },
        iter: 200,
        threads: 1);

    [Fact]
    public void Every_specimen_is_handed_in_once_in_time_and_on_the_way() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithDrops(RandomWeek.Rich(seed), seed);
            WeekPlan plan = Plan(problem, 30);
            var tasks = problem.Tasks.ToDictionary(t => t.Id);
            var visits = plan.Visits.ToDictionary(v => v.Id);
            var stops = DropStops.Of(problem, plan);
            PlannedVisit[] draws = [.. plan.Visits.Where(v => v.Tasks.Any(t => tasks[t].DrawToDropMinutes is not null))];
            Assert.Equal(draws.Select(v => v.Id).Order(), stops.SelectMany(s => s.Visits).Order());
            foreach (DropStop stop in stops)
            {
                foreach (PlannedVisit visit in stop.Visits.Select(v => visits[v]))
                {
                    Assert.Equal(stop.Nurse, visit.Nurse);
                    Assert.InRange(stop.Arrive - visit.Start, visit.Minutes, visit.Tasks.Min(t => tasks[t].DrawToDropMinutes ?? int.MaxValue));
                }

                int after = visits[stop.After].Start + visits[stop.After].Minutes + problem.Rules.DocumentationMinutes;
                PlannedVisit? next = plan.Visits.Where(v => (v.Nurse == stop.Nurse || v.Second == stop.Nurse) && v.Start > visits[stop.After].Start && v.Start / 1440 == stop.Arrive / 1440).MinBy(v => v.Start);
                Assert.True(stop.Arrive >= after && (next is null || stop.Leave <= next.Start));
                Assert.Contains(problem.DropPoints.Single(d => d.Name == stop.Name).Cutoffs, c => c >= stop.Arrive && c / 1440 == stop.Arrive / 1440);
            }
        },
        iter: 80,
        threads: 1);

    [Theory]
    [InlineData(3, 31_001, 40)]
    [InlineData(4, 32_001, 30)]
    [InlineData(5, 33_001, 12)]
    public void Tiny_weeks_are_planned_as_well_as_can_be_and_the_bound_is_not_above(int tasks, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.WithDrops(RandomWeek.TinyRich(seed, tasks), seed);
            PlanScore optimum = new FullEnumeration(problem).Best();
            WeekPlan plan = Plan(problem, 1_500);
            if (plan.Score != optimum)
                Assert.Fail($"Seed {seed}: planned {plan.Score}, possible {optimum}.\n{Shrinking.Smallest(problem, p => Plan(p, 1_500).Score != new FullEnumeration(p).Best())}");
            WeekBound bound = Planner.Bound(problem, plan, cancel: TestContext.Current.CancellationToken);
            Assert.All(bound.Tiers, t => Assert.True(t.AtLeast <= WeekBound.Amount(optimum, t.Tier)));
        }
    }

    [Fact]
    public void The_drive_to_the_drop_point_is_part_of_the_day()
    {
        // Homes at 0, 1 and 2 (ten minutes apart), the drop point at 4. At P2 first: 08:20 to 09:00, charted 09:15, there 09:35, 5 minutes, at P1 10:10.
        WeekProblem problem = Draw(place: 2, drop: 4, most: 120);
        WeekPlan plan = new([SmallWeek.Visit("V1", "P2", "N1", SmallWeek.At(0, 8, 20), "T2"), SmallWeek.Visit("V2", "P1", "N1", SmallWeek.At(0, 10, 10), "T1")], [], default);
        CheckReport report = Checker.Check(problem, plan);
        Assert.Equal([], report.Findings);
        DropStop stop = Assert.Single(DropStops.Of(problem, plan));
        Assert.Equal(("N1", "V1", "lab", SmallWeek.At(0, 9, 35), SmallWeek.At(0, 9, 40), 45), (stop.Nurse, stop.After, stop.Name, stop.Arrive, stop.Leave, stop.Minutes));
        Assert.Equal((20 + 10 + 10, 1, 45), (report.Figures.DrivingMinutes, report.Figures.DropStops, report.Figures.DropMinutes));
        Assert.Equal(60 + 40 + 45, report.Score.Work);
    }

    [Fact]
    public void Two_specimens_share_one_stop_and_the_better_order_is_found()
    {
        WeekProblem problem = Draw(place: 2, drop: 4, most: 180) with { };
        problem = problem with { Tasks = [.. problem.Tasks.Select(t => t with { DrawToDropMinutes = 180 })] };
        WeekPlan plan = Plan(problem, 200);
        Assert.Single(DropStops.Of(problem, plan));
        Assert.Equal(["P1", "P2"], plan.Visits.OrderBy(v => v.Start).Select(v => v.Patient));
        // 10 + 10 out, 20 to the drop point, 40 home instead of 20: the stop adds 45 with handing in.
        Assert.Equal(60 + 40 + 45, plan.Score.Work);
    }

    [Fact]
    public void A_specimen_that_waits_too_long_is_refused_with_its_visit()
    {
        WeekProblem problem = Draw(place: 2, drop: 4, most: 70);
        WeekPlan plan = new([SmallWeek.Visit("V1", "P2", "N1", SmallWeek.At(0, 8, 20), "T2"), SmallWeek.Visit("V2", "P1", "N1", SmallWeek.At(0, 10, 10), "T1")], [], default);
        Finding finding = Assert.Single(Checker.Check(problem, plan).Findings);
        Assert.Equal(("H11", "V1", ReasonCode.SpecimenLate), (finding.Rule, finding.Visit, finding.Reason.Code));
        Assert.Contains(Plan(problem, 50).Unmet, u => u.Task == "T2");
    }

    [Fact]
    public void After_the_last_collection_nothing_is_drawn()
    {
        WeekProblem problem = Draw(place: 2, drop: 4, most: 600);
        problem = problem with { Tasks = [problem.Tasks[0], problem.Tasks[1] with { Opens = SmallWeek.At(0, 14, 30) }] };
        Assert.Contains(Plan(problem, 50).Unmet, u => u.Task == "T2");
        Assert.Empty(Plan(problem with { DropPoints = [problem.DropPoints[0] with { Cutoffs = [SmallWeek.At(0, 15, 45)] }] }, 50).Unmet);
    }

    /// <summary>T1 at P1 (place 1), and a draw T2 at P2.</summary>
    private static WeekProblem Draw(int place, int drop, int most)
    {
        WeekProblem problem = SmallWeek.Of(
            [SmallWeek.Nurse("N1", 0)],
            [SmallWeek.Patient("P1", 1), SmallWeek.Patient("P2", place)],
            [SmallWeek.Task("T1", "P1"), SmallWeek.Task("T2", "P2") with { DrawToDropMinutes = most }],
            1);
        return problem with { Rules = problem.Rules with { HandInMinutes = 5 }, DropPoints = [new DropPoint("lab", drop, [SmallWeek.At(0, 15)])] };
    }

    private static WeekPlan Plan(WeekProblem problem, int rounds) => Planner.Plan(problem, new PlanOptions(1, rounds), cancel: TestContext.Current.CancellationToken);
}
