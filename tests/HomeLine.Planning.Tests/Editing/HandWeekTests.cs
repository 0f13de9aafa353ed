using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests.Editing;

/// <summary>Moves by hand on weeks worked out on paper, and on the demonstration week. Invented data.</summary>
public sealed class HandWeekTests
{
    /// <summary>A sees P at place 1 at 08:10 and Q at place 2 at 09:15; B is free. 10 + 30 minutes a visit, 15 to chart, 10 on the road.</summary>
    private static HandWeek Hand(IReadOnlySet<string>? pinned = null, int now = 0) => new(
        Of([Nurse("A", 0, 1), Nurse("B", 0, 1)], [Patient("P", 1), Patient("Q", 2)], [Task("p", "P", 0, 2), Task("q", "Q", 0, 2)]) with
        {
            Now = now,
            Published = Plan(Visit("v", "P", "A", At(0, 8, 10), "p"), Visit("w", "Q", "A", At(0, 9, 15), "q")),
        },
        [Visit("v", "P", "A", At(0, 8, 10), "p"), Visit("w", "Q", "A", At(0, 9, 15), "q")],
        pinned);

    [Fact]
    public void A_visit_moved_to_another_nurse_on_its_day_keeps_its_start()
    {
        HandChange change = Hand().Try(new HandMove.Move("v", new DayPlace("B", 0, 0)));

        Assert.True(change.IsAllowed);
        Assert.Equal(At(0, 8, 10), change.Moved!.Start);
        Assert.Equal("B", change.Moved.Nurse);
        // A drives 0-2-0 instead of 0-1-2-0, B drives 0-1-0: 40 + 20 - 40.
        Assert.Equal(20, change.DrivingMinutes);
    }

    [Fact]
    public void A_visit_put_before_another_pushes_it_only_as_far_as_the_road_asks()
    {
        HandChange change = Hand().Try(new HandMove.Move("w", new DayPlace("A", 0, 0)));

        Assert.True(change.IsAllowed);
        // Q lies 20 minutes from home; P follows after 40 minutes, 15 to chart, 10 on the road.
        Assert.Equal(At(0, 8, 20), change.Moved!.Start);
        Assert.Equal(At(0, 9, 25), change.After.Single(v => v.Id == "v").Start);
    }

    [Fact]
    public void Two_visits_swap_their_places()
    {
        HandChange change = Hand().Try(new HandMove.Swap("v", "w"));

        Assert.True(change.IsAllowed);
        Assert.True(change.After.Single(v => v.Id == "w").Start < change.After.Single(v => v.Id == "v").Start);
    }

    [Fact]
    public void Two_nurses_swap_a_day_and_the_starts_stay()
    {
        HandChange change = Hand().Try(new HandMove.SwapDays("A", "B", 0));

        Assert.True(change.IsAllowed);
        Assert.All(change.After, v => Assert.Equal("B", v.Nurse));
        Assert.Equal([At(0, 8, 10), At(0, 9, 15)], change.After.Select(v => v.Start));
    }

    [Fact]
    public void Care_taken_out_is_unmet_and_costs_as_such()
    {
        HandWeek hand = Hand();

        HandChange change = hand.Try(new HandMove.TakeOut("v"));

        Assert.True(change.IsAllowed);
        Assert.Null(change.Moved);
        Assert.True(change.Score.Risk > hand.Check.Score.Risk);
    }

    [Fact]
    public void The_rule_that_forbids_a_place_is_named()
    {
        Assert.Equal(ReasonCode.NotWorking, Assert.Single(Hand().Try(new HandMove.Move("v", new DayPlace("B", 2, 0))).Broken).Reason.Code);
        Finding pinned = Assert.Single(Hand(new HashSet<string> { "v" }).Try(new HandMove.Move("v", new DayPlace("B", 0, 0))).Broken);
        Assert.Equal(ReasonCode.VisitPinned, pinned.Reason.Code);
    }

    [Fact]
    public void What_starts_within_the_hour_does_not_move()
    {
        ImmutableArray<PlannedVisit> told = [Visit("v", "P", "A", At(0, 8, 10), "p") with { Promise = PromiseState.Told, ToldFrom = At(0, 8, 10) }];
        WeekProblem week = Of([Nurse("A", 0, 1), Nurse("B", 0, 1)], [Patient("P", 1)], [Task("p", "P", 0, 2)]) with { Now = At(0, 7, 30), Published = new WeekPlan(told, [], default) };
        var hand = new HandWeek(week, told);

        Assert.True(hand.Stays("v"));
        Assert.Empty(hand.PlacesOf("v"));
        Assert.Contains(hand.Try(new HandMove.Move("v", new DayPlace("B", 0, 0))).Broken, f => f.Reason.Code == ReasonCode.FixedChanged);
    }

    [Fact]
    public void Every_place_of_the_demonstration_week_that_is_offered_passes_the_whole_checker()
    {
        var hand = new HandWeek(DemoWeek.Problem with { Published = DemoWeek.Published }, DemoWeek.Published.Visits);
        foreach (PlannedVisit visit in DemoWeek.Published.Visits.Where((_, i) => i % 7 == 0))
        {
            foreach (WorkablePlace place in hand.PlacesOf(visit.Id))
            {
                var gone = place.Change.Before.Select(v => v.Id).ToHashSet();
                ImmutableArray<PlannedVisit> then = [.. hand.Visits.Where(v => !gone.Contains(v.Id)), .. place.Change.After];
                CheckReport whole = new HandWeek(hand.Problem, then).Check;
                Assert.Equal(hand.Check.Findings.Length, whole.Findings.Length);
                Assert.Equal(whole.Score, place.Change.Score);
                Assert.Equal(whole.Figures.DrivingMinutes - hand.Check.Figures.DrivingMinutes, place.Change.DrivingMinutes);
            }
        }
    }

    [Fact]
    public void Another_second_person_comes_and_the_visit_stays_where_it_is()
    {
        // P takes two people; B came, C is free that day, D does not work.
        WeekProblem week = Of(
            [Nurse("A", 0, 1), Nurse("B", 0, 1), Nurse("C", 1), Nurse("D", 0)],
            [Patient("P", 1) with { CrewSize = 2 }],
            [Task("p", "P", 0, 2)]);
        var hand = new HandWeek(week, [Visit("v", "P", "A", At(1, 8, 10), "p") with { Second = "B" }]);

        HandChange free = hand.Try(new HandMove.ChangeSecond("v", "C")), off = hand.Try(new HandMove.ChangeSecond("v", "D"));

        Assert.True(free.IsAllowed, string.Join("\n", free.Broken.Select(f => f.Reason.Sentence)));
        Assert.Equal(("A", "C", At(1, 8, 10)), (free.Moved!.Nurse, free.Moved.Second, free.Moved.Start));
        Assert.False(off.IsAllowed);
    }

    [Fact]
    public void Two_people_move_together_and_the_later_one_sets_the_start()
    {
        // P takes two people; B sees Q at 08:20.
        WeekProblem week = Of(
            [Nurse("A", 0, 1), Nurse("B", 0, 1)],
            [Patient("P", 1) with { CrewSize = 2 }, Patient("Q", 2)],
            [Task("p", "P", 0, 2), Task("q", "Q", 0, 2)]);
        var hand = new HandWeek(week, [Visit("v", "P", "A", At(1, 8, 10), "p") with { Second = "B" }, Visit("w", "Q", "B", At(0, 8, 20), "q")]);

        HandChange change = hand.Try(new HandMove.Move("v", new DayPlace("A", 0, 0)));

        Assert.True(change.IsAllowed, string.Join("\n", change.Broken.Select(f => f.Reason.Sentence)));
        Assert.Equal(("A", "B"), (change.Moved!.Nurse, change.Moved.Second));
        // Both can be at P at 08:10 for 40 minutes; B charts 15 and drives 10 to Q.
        Assert.Equal(At(0, 8, 10), change.Moved.Start);
        Assert.Equal(At(0, 9, 15), change.After.Single(v => v.Id == "w").Start);
    }

    [Fact]
    public void Somebody_goes_along_where_one_is_enough_and_the_start_stays()
    {
        HandChange change = Hand().Try(new HandMove.ChangeSecond("v", "B"));

        Assert.True(change.IsAllowed, string.Join("\n", change.Broken.Select(f => f.Reason.Sentence)));
        Assert.Equal(("A", "B", At(0, 8, 10)), (change.Moved!.Nurse, change.Moved.Second, change.Moved.Start));
        // B drives there and home again, 10 minutes each way.
        Assert.Equal(20, change.DrivingMinutes);
    }

    [Fact]
    public void Nobody_goes_along_whom_the_patient_refuses_or_who_is_elsewhere()
    {
        WeekProblem week = Of(
            [Nurse("A", 0, 1), Nurse("B", 0, 1), Nurse("C", 1)],
            [Patient("P", 1) with { RefusedNurses = ["B"] }],
            [Task("p", "P", 0, 2)]);
        var hand = new HandWeek(week, [Visit("v", "P", "A", At(0, 8, 10), "p")]);

        Assert.Contains(hand.Try(new HandMove.ChangeSecond("v", "B")).Broken, f => f.Reason.Code == ReasonCode.NurseRefused);
        // C works on the other day only.
        Assert.Contains(hand.Try(new HandMove.ChangeSecond("v", "C")).Broken, f => f.Reason.Code == ReasonCode.NotWorking);
        Assert.Contains(hand.Try(new HandMove.ChangeSecond("v", "A")).Broken, f => f.Reason.Code == ReasonCode.SecondWrong);
    }

    [Fact]
    public void Where_two_are_asked_for_nobody_is_left_alone()
    {
        WeekProblem week = Of([Nurse("A", 0, 1), Nurse("B", 0, 1)], [Patient("P", 1) with { CrewSize = 2 }], [Task("p", "P", 0, 2)]);
        var hand = new HandWeek(week, [Visit("v", "P", "A", At(0, 8, 10), "p") with { Second = "B" }]);

        Assert.Contains(hand.Try(new HandMove.ChangeSecond("v", null)).Broken, f => f.Reason.Code == ReasonCode.SecondMissing);
    }

    [Fact]
    public void Unmet_care_is_placed_or_joins_the_visit_of_the_day()
    {
        WeekProblem week = Of([Nurse("A", 0, 1)], [Patient("P", 1)], [Task("p", "P", 0, 2), Task("r", "P", 0, 2)]);
        var hand = new HandWeek(week, [Visit("v", "P", "A", At(0, 8, 10), "p")]);

        HandChange joined = hand.Try(new HandMove.PlaceCare(["r"], new DayPlace("A", 0, 0)));
        HandChange own = hand.Try(new HandMove.PlaceCare(["r"], new DayPlace("A", 1, 0)));

        Assert.True(joined.IsAllowed);
        Assert.Equal(["p", "r"], joined.Moved!.Tasks);
        Assert.Equal(70, joined.Moved.Minutes);
        Assert.True(own.IsAllowed);
        Assert.Equal(At(1, 8, 10), own.Moved!.Start);
        Assert.Equal(2, hand.PlacesOf(["r"]).Length);
    }
}
