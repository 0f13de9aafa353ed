using HomeLine.Planning.Answers;
using HomeLine.Planning.Bounding;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests;

/// <summary>No nurse gets more visits of a kind than she takes a day or a week: planned, mended, answered and by hand. Invented data.</summary>
public sealed class PlannerVisitCapTests
{
    private static readonly CareTask[] TwoStarts = [Start("a", "A"), Start("b", "B")];

    [Fact]
    public void A_cap_of_one_a_day_puts_the_second_start_of_care_on_another_day()
    {
        WeekPlan plan = Planned(Of([Capped("N1", 1, false, 0, 1)], [Patient("A", 1), Patient("B", 1)], [TwoStarts[0], TwoStarts[1] with { LateFrom = 2 * 1440 }]));
        Assert.Equal([0, 1], plan.Visits.Select(v => v.Start / 1440));
    }

    [Fact]
    public void A_second_nurse_takes_what_the_cap_keeps_from_the_first()
    {
        WeekPlan plan = Planned(Of([Capped("N1", 1, false, 0), Capped("N2", 1, false, 0)], [Patient("A", 1), Patient("B", 1)], [.. TwoStarts]));
        Assert.Equal(["N1", "N2"], plan.Visits.Select(v => v.Nurse).Order());
    }

    [Fact]
    public void Two_starts_of_care_in_one_home_are_one_visit_and_count_once()
    {
        WeekPlan plan = Planned(Of([Capped("N1", 1, false, 0)], [Patient("A", 1)], [TwoStarts[0], Start("a2", "A")]));
        Assert.Equal(["a", "a2"], Assert.Single(plan.Visits).Tasks);
    }

    [Fact]
    public void What_a_cap_on_the_week_leaves_out_is_unmet_and_says_so()
    {
        WeekPlan plan = Planned(Of([Capped("N1", 1, true, 0, 1, 2)], [Patient("A", 1), Patient("B", 1)], [.. TwoStarts]));
        UnmetTask unmet = Assert.Single(plan.Unmet);
        Assert.Equal(ReasonCode.TooManyOfKind, unmet.Reasons[0].Code);
        Assert.Contains("With Nurse N1 there are as many visits of this kind as they take", unmet.Reasons[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_next_seven_days_count_anew()
    {
        CareTask[] fortnight = [Start("a", "A"), Start("b", "B") with { Opens = 7 * 1440, LateFrom = 8 * 1440 }];
        Assert.Equal(2, Planned(Of([Capped("N1", 1, true, 0, 7)], [Patient("A", 1), Patient("B", 1)], [.. fortnight], days: 14)).Visits.Length);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Tiny_weeks_with_caps_are_planned_as_well_as_can_be_and_mostly_proven(bool aWeek)
    {
        int proven = 0;
        for (int seed = 5_001; seed < 5_031; seed++)
        {
            WeekProblem week = RandomWeek.TinyRich(seed, 5);
            week = week with
            {
                Tasks = [.. week.Tasks.Select(t => t with { Kinds = t.Skills })],
                Nurses = [.. week.Nurses.Select(n => n with { Caps = [new VisitCap("PICC", 1, aWeek), new VisitCap("LAB", 1, !aWeek)] })],
            };
            PlanScore optimum = new FullEnumeration(week).Best();
            WeekPlan plan = Planned(week);
            Assert.Equal((seed, optimum), (seed, plan.Score));
            WeekBound bound = Planner.Bound(week, plan, cancel: TestContext.Current.CancellationToken);
            Assert.All(bound.Tiers, t => Assert.True(t.AtLeast <= WeekBound.Amount(optimum, t.Tier), $"{seed}: {t}"));
            if (bound.Optimal) proven++;
        }

        Assert.True(proven >= 27, $"Only {proven} of 30 are proven.");
    }

    [Fact]
    public void The_bound_knows_that_a_cap_sends_a_second_nurse_out()
    {
        // Without the cap one nurse would do both for 60 + 10 + 5 + 10; with it two do one each.
        WeekProblem week = Of([Capped("N1", 1, false, 0), Capped("N2", 1, false, 0)], [Patient("A", 1), Patient("B", 1)], [.. TwoStarts]);
        WeekBound bound = Planner.Bound(week, Planned(week), cancel: TestContext.Current.CancellationToken);
        Assert.True(bound.Optimal);
        Assert.Equal(60 + 20 + 20, bound.Tiers.Single(t => t.Tier == Tier.Work).AtLeast);
    }

    [Fact]
    public void By_hand_a_third_one_is_refused_with_its_name()
    {
        var week = Of([Capped("N1", 1, false, 0), Nurse("N2", 0)], [Patient("A", 1), Patient("B", 2)], [.. TwoStarts]);
        var hand = new HandWeek(week, [Visit("va", "A", "N1", At(0, 8, 10), "a"), Visit("vb", "B", "N2", At(0, 9), "b")], null);
        HandChange change = hand.Try(new HandMove.Move("vb", new DayPlace("N1", 0, 1)));
        Assert.Equal(ReasonCode.TooManyOfKind, Assert.Single(change.Broken).Reason.Code);
        Assert.Equal("Nurse N1 has 2 visits of the kind SOC on Mon; she takes 1 a day.", change.Broken[0].Reason.Sentence);
        Assert.DoesNotContain(hand.PlacesOf("vb"), p => p.Place.Nurse == "N1");
    }

    [Fact]
    public void By_hand_the_whole_week_of_a_weekly_cap_is_looked_at()
    {
        var week = Of([Capped("N1", 1, true, 0, 1, 2, 3, 4), Nurse("N2", 4)], [Patient("A", 1), Patient("B", 2)], [Start("a", "A"), Start("b", "B") with { LateFrom = 5 * 1440 }], days: 5);
        var hand = new HandWeek(week, [Visit("va", "A", "N1", At(0, 8, 10), "a"), Visit("vb", "B", "N2", At(4, 9), "b")], null);
        Assert.Equal(ReasonCode.TooManyOfKind, Assert.Single(hand.Try(new HandMove.Move("vb", new DayPlace("N1", 4, 0))).Broken).Reason.Code);
    }

    [Fact]
    public void An_urgent_answer_rules_a_nurse_out_who_has_her_fill()
    {
        PlannedVisit first = Visit("va", "A", "N1", At(0, 10), "a") with { Promise = PromiseState.Told };
        WeekProblem week = Of([Capped("N1", 1, false, 0), Nurse("N2", 0)], [Patient("A", 1), Patient("B", 2)], [.. TwoStarts]) with { Published = Plan(first) };
        UrgentAnswers found = Planner.Answer(week, new UrgentNeed("B", ["b"], []));
        Assert.All(found.Answers, a => Assert.Equal("N2", a.Visit.Nurse));
        Assert.Equal((ReasonCode.TooManyOfKind, "Nurse N1 already has 1 visit of the kind SOC, the most she takes a day."),
            (Assert.Single(found.RuledOut).Reason.Code, found.RuledOut[0].Reason.Sentence));
    }

    private static CareTask Start(string id, string patient) => Task(id, patient) with { Kinds = ["SOC"] };

    private static Nurse Capped(string id, int most, bool aWeek, params int[] days) => Nurse(id, days) with { Caps = [new VisitCap("SOC", most, aWeek)] };

    private static WeekPlan Planned(WeekProblem problem)
    {
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 1_500), cancel: TestContext.Current.CancellationToken);
        Assert.Equal([], Checker.Check(problem, plan).Findings);
        return plan;
    }
}
