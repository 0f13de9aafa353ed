using HomeLine.Planning.Bounding;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Proof;
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

    [Theory]
    [InlineData(4, 15_001, 10)]
    [InlineData(5, 16_001, 4)]
    public void Nor_does_it_with_two_person_visits_and_chains_in_minutes(int tasks, int firstSeed, int weeks)
    {
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = RandomWeek.TinyTied(seed, tasks);
            string? wrong = Wrong(problem, new ExactWeek(problem).Best().Score);
            if (wrong is not null) Assert.Fail($"Seed {seed}: {wrong}.\n{Shrinking.Smallest(problem, p => Wrong(p, new ExactWeek(p).Best().Score) is not null)}");
        }
    }

    [Fact]
    public void Nor_does_the_climb_of_prices_by_which_large_weeks_are_bounded()
    {
        var climb = new BoundOptions(Rounds: 40, Columns: 0, NearPatients: 2, ClimbFrom: 0);
        for (int seed = 17_001; seed < 17_041; seed++)
        {
            WeekProblem problem = RandomWeek.TinyRich(seed, 5);
            PlanScore optimum = new FullEnumeration(problem).Best();
            string? wrong = Wrong(problem, optimum, climb);
            if (wrong is not null) Assert.Fail($"Seed {seed}: {wrong}.\n{Shrinking.Smallest(problem, p => Wrong(p, new FullEnumeration(p).Best(), climb) is not null)}");
        }
    }

    [Fact]
    public void Weeks_with_a_bit_of_everything_have_a_bound_and_no_plan_below_it()
    {
        for (int seed = 1; seed <= 40; seed++)
        {
            WeekBound bound = Bound(RandomWeek.Rich(seed));
            Assert.All(bound.Tiers, t => Assert.True(t.AtLeast <= t.Planned));
        }
    }

    [Fact]
    public void The_same_week_and_plan_give_the_same_bound()
    {
        WeekProblem problem = RandomWeek.Small(3);
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 300), cancel: TestContext.Current.CancellationToken);
        var options = new BoundOptions(Effort: 0.5);
        WeekBound first = Planner.Bound(problem, plan, options, TestContext.Current.CancellationToken), second = Planner.Bound(problem, plan, options, TestContext.Current.CancellationToken);
        Assert.Equal(first.Tiers.AsEnumerable(), second.Tiers);
        Assert.Equal((first.Rounds, first.Columns), (second.Rounds, second.Columns));
    }

    [Fact]
    public void Cancelled_before_it_begins_it_proves_what_care_alone_proves_and_no_more()
    {
        WeekProblem problem = RandomWeek.Small(3);
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 300), cancel: TestContext.Current.CancellationToken);
        WeekBound bound = Planner.Bound(problem, plan, cancel: new CancellationToken(canceled: true));
        Assert.False(bound.Optimal);
        Assert.Equal(0, bound.Open!.Tier == Tier.Work ? bound.Open.AtLeast : 0);
    }

    [Fact]
    public void A_plan_that_breaks_a_rule_is_refused()
    {
        WeekProblem problem = SmallWeek.Of([SmallWeek.Nurse("N1", 0)], [SmallWeek.Patient("P1", 1)], [SmallWeek.Task("T1", "P1")]);
        Assert.Throws<ArgumentException>(() => Planner.Bound(problem, SmallWeek.Plan(), cancel: TestContext.Current.CancellationToken));
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 10), cancel: TestContext.Current.CancellationToken);
        Assert.True(Planner.Bound(problem, plan, cancel: TestContext.Current.CancellationToken).Optimal);
    }

    [Fact]
    public void A_visit_that_must_stay_is_in_every_plan_and_one_off_any_shift_is_refused()
    {
        // Two visits in one go would be 40 minutes of road; the one that stays late makes the day wait.
        WeekProblem problem = SmallWeek.Of([SmallWeek.Nurse("N1", 0)], [SmallWeek.Patient("P1", 1), SmallWeek.Patient("P2", 2)], [SmallWeek.Task("T1", "P1"), SmallWeek.Task("T2", "P2")], 1);
        PlannedVisit late = SmallWeek.Visit("V2", "P2", "N1", SmallWeek.At(0, 14), "T2");
        WeekProblem frozen = problem with
        {
            Published = new WeekPlan([late], [], default),
            FrozenVisits = ["V2"],
            Tasks = [problem.Tasks[0] with { HardLatest = SmallWeek.At(0, 10) }, problem.Tasks[1]],
        };
        WeekPlan plan = Planner.Plan(frozen, new PlanOptions(1, 50), cancel: TestContext.Current.CancellationToken);
        WeekBound bound = Planner.Bound(frozen, plan, cancel: TestContext.Current.CancellationToken);
        Assert.True(bound.Optimal);
        Assert.True(plan.Score.Work > 60 + 40);
        WeekProblem off = frozen with { Published = new WeekPlan([late with { Start = SmallWeek.At(0, 16, 30) }], [], default) };
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Planner.Bound(off, Planner.Plan(off, new PlanOptions(1, 50), cancel: TestContext.Current.CancellationToken), cancel: TestContext.Current.CancellationToken));
        Assert.Contains("home too late", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3, 41_001, 40)]
    [InlineData(4, 42_001, 40)]
    [InlineData(5, 43_001, 20)]
    public void With_visits_that_must_stay_it_never_exceeds_the_optimum_and_mostly_proves_it(int tasks, int firstSeed, int weeks)
    {
        int proven = 0;
        for (int seed = firstSeed; seed < firstSeed + weeks; seed++)
        {
            WeekProblem problem = SomeStay(RandomWeek.TinyRich(seed, tasks), seed);
            PlanScore optimum = new FullEnumeration(problem).Best();
            if (Bound(problem) is { Optimal: true }) proven++;
            string? wrong = Wrong(problem, optimum);
            if (wrong is not null) Assert.Fail($"Seed {seed}: {wrong}.\n{Shrinking.Smallest(problem, p => Wrong(p, new FullEnumeration(p).Best()) is not null)}");
        }

        Assert.True(proven >= 0.9 * weeks, $"Only {proven} of {weeks} are proven.");
    }

    [Fact]
    public void Somebody_who_goes_along_on_a_visit_that_must_stay_is_in_every_plan()
    {
        // N1 at the one home with N2 beside her from 10:00; N2's road out and back and her visit are paid as well.
        WeekProblem problem = SmallWeek.Of([SmallWeek.Nurse("N1", 0), SmallWeek.Nurse("N2", 0)], [SmallWeek.Patient("P1", 1), SmallWeek.Patient("P2", 2)], [SmallWeek.Task("T1", "P1"), SmallWeek.Task("T2", "P2")], 1);
        PlannedVisit along = SmallWeek.Visit("V1", "P1", "N1", SmallWeek.At(0, 10), "T1") with { Second = "N2" };
        WeekProblem frozen = problem with { Published = new WeekPlan([along], [], default), FrozenVisits = ["V1"] };
        WeekPlan plan = Planner.Plan(frozen, new PlanOptions(1, 200), cancel: TestContext.Current.CancellationToken);
        WeekBound bound = Planner.Bound(frozen, plan, cancel: TestContext.Current.CancellationToken);
        Assert.True(bound.Optimal);
        // Three seats; one drives to 1 and back, the other on to 2 and back.
        Assert.Equal(90 + 20 + 40, bound.Tiers.Single(t => t.Tier == Tier.Work).AtLeast);
    }

    [Fact]
    public void With_people_who_go_along_no_plan_is_below_the_bound_and_most_are_proven()
    {
        int looked = 0, proven = 0;
        for (int seed = 44_001; seed < 44_061; seed++)
        {
            CancellationToken cancel = TestContext.Current.CancellationToken;
            WeekProblem problem = SomebodyAlong(SomeStay(RandomWeek.TinyRich(seed, 5), seed));
            if (problem.Published!.Visits.All(v => v.Second is null)) continue;
            WeekPlan[] plans = [.. Enumerable.Range(1, 3).Select(s => Planner.Plan(problem, new PlanOptions((ulong)s, 400), cancel: cancel))];
            WeekBound bound = Planner.Bound(problem, plans.MinBy(p => p.Score)!, cancel: cancel);
            looked++;
            if (bound.Optimal) proven++;
            foreach (WeekPlan other in plans) Assert.All(Planner.Bound(problem, other, cancel: cancel).Tiers, t => Assert.True(t.AtLeast <= t.Planned));
        }

        Assert.True(looked >= 15 && proven >= 0.9 * looked, $"{proven} of {looked} are proven.");
    }

    /// <summary>A colleague whose day has no visit yet goes along on the first visit that must stay, where she can be there.</summary>
    private static WeekProblem SomebodyAlong(WeekProblem problem)
    {
        PlannedVisit[] stay = [.. problem.Published!.Visits];
        for (int i = 0; i < stay.Length; i++)
        {
            PlannedVisit visit = stay[i];
            int place = problem.Patients.First(p => p.Id == visit.Patient).Place, end = visit.Start + visit.Minutes + problem.Rules.DocumentationMinutes;
            Nurse? along = problem.Nurses.FirstOrDefault(n => n.Id != visit.Nurse
                && stay.All(v => v.Nurse != n.Id || v.Start / 1440 != visit.Start / 1440)
                && n.Shifts.Any(s => !s.OnCall && s.Day == visit.Start / 1440 && s.From + problem.Travel.Minutes(n.Home, place) <= visit.Start && end + problem.Travel.Minutes(place, n.Home) <= s.To));
            if (along is null) continue;
            stay[i] = visit with { Second = along.Id };
            return problem with { Published = problem.Published with { Visits = [.. stay] } };
        }

        return problem;
    }

    /// <summary>Every second visit of a hasty plan must stay.</summary>
    private static WeekProblem SomeStay(WeekProblem problem, int seed)
    {
        WeekPlan plan = Planner.Plan(problem, new PlanOptions((ulong)seed, 0), cancel: TestContext.Current.CancellationToken);
        PlannedVisit[] stay = [.. plan.Visits.Where((_, i) => (i + seed) % 2 == 0).Select(v => v with { Id = v.Tasks[0] })];
        var starts = stay.SelectMany(v => v.Tasks, (v, t) => (t, v.Start)).ToDictionary(p => p.t, p => p.Start);
        return problem with
        {
            Published = new WeekPlan([.. stay], [], default),
            FrozenVisits = [.. stay.Select(v => v.Id)],
            Tasks = [.. problem.Tasks.Select(t => starts.TryGetValue(t.Id, out int start) ? t with { StartSpans = [new Span(start, start)] } : t)],
        };
    }

    private static string? Wrong(WeekProblem problem, PlanScore optimum, BoundOptions? options = null)
    {
        WeekBound bound = Bound(problem, options);
        foreach (TierBound tier in bound.Tiers)
        {
            long best = WeekBound.Amount(optimum, tier.Tier);
            if (tier.AtLeast > best) return $"{tier} is above the optimum {optimum}";
            if (best < tier.Planned) return null;
        }

        return null;
    }

    private static WeekBound Bound(WeekProblem problem, BoundOptions? options = null)
    {
        CancellationToken cancel = TestContext.Current.CancellationToken;
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 300), cancel: cancel);
        return Planner.Bound(problem, plan, options, cancel);
    }
}
