using HomeLine.Planning.Answers;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests.Answers;

/// <summary>
/// One nurse-day of three told visits on a line of places ten minutes apart: A 08:10, B 09:15, C 13:00, each 40 minutes and 15 of charting. An urgent
/// need of 50 minutes comes up at place 1, where A lives.
/// </summary>
public sealed class UrgentAnswerTests
{
    private static readonly PlannedVisit A = Told("va", "A", "N1", At(0, 8, 10), "a");
    private static readonly PlannedVisit B = Told("vb", "B", "N1", At(0, 9, 15), "b");
    private static readonly PlannedVisit C = Told("vc", "C", "N1", At(0, 13), "c");

    [Fact]
    public void A_gap_that_is_long_enough_is_used_and_nobody_moves()
    {
        UrgentAnswers found = Planner.Answer(Week(), Need());
        UrgentAnswer best = found.Answers[0];

        // B is left at 10:10, ten minutes back to place 1, done and charted by 11:25, twenty minutes to C at place 3.
        Assert.Equal((At(0, 10, 20), "N1"), (best.Visit.Start, best.Visit.Nurse));
        Assert.Empty(best.Moved);
        Assert.Equal(20, best.DrivingDelta);
        Assert.Equal(best.Plan.Score, Checker.Check(Week(), best.Plan).Score);
    }

    [Fact]
    public void A_visit_about_to_start_keeps_nurse_place_and_time()
    {
        UrgentAnswers found = Planner.Answer(Week() with { Now = At(0, 7, 30) }, Need());
        Assert.All(found.Answers.Concat(found.Dominated), a => Assert.Contains(A, a.Plan.Visits));
    }

    [Fact]
    public void A_push_inside_the_told_range_disturbs_nobody()
    {
        WeekProblem week = Week() with { Published = Plan(A, B, C with { Start = At(0, 11), ToldFrom = At(0, 11) }) };
        UrgentAnswer after = Planner.Answer(week, Need()).Answers[0];
        Assert.Equal(At(0, 10, 20), after.Visit.Start);
        Assert.Empty(after.Moved);
        Assert.Equal(At(0, 11, 45), after.Plan.Visits.Single(v => v.Id == "vc").Start);
    }

    [Fact]
    public void When_nothing_gentle_is_in_time_more_is_tried()
    {
        UrgentAnswers found = Planner.Answer(Due(At(0, 8, 30)), Need());
        UrgentAnswer best = found.Answers[0];
        Assert.True(best.Visit.Start < At(0, 8, 30));
        Assert.InRange(best.Moved.Length, 1, 3);
        Assert.True(Checker.Check(Due(At(0, 8, 30)), best.Plan).Accepted);
    }

    [Fact]
    public void A_second_nurse_may_take_over_the_visit_that_stands_in_the_way()
    {
        WeekProblem week = Due(At(0, 8, 30), Nurse("N2", 0) with { Skills = ["PICC"] }) with { Published = Full() };
        week = week with { Tasks = [.. week.Tasks.Select(t => t.Id == "u" ? t with { Skills = ["PICC", "PORT"] } : t)] };
        Shift short1 = week.Nurses[0].Shifts[0] with { To = At(0, 12), OvertimeTo = At(0, 12) };
        week = week with { Nurses = [week.Nurses[0] with { Skills = ["PICC", "PORT"], Shifts = [short1] }, week.Nurses[1]] };
        UrgentAnswer best = Planner.Answer(week, Need()).Answers[0];
        Assert.Equal("N1", best.Visit.Nurse);
        Assert.Contains(best.Moved, m => m.After.Nurse == "N2");
        Assert.True(Checker.Check(week, best.Plan).Accepted);
    }

    [Fact]
    public void The_nurse_on_call_is_asked_only_when_nobody_else_can()
    {
        Nurse onCall = Nurse("N2", 0);
        onCall = onCall with { Shifts = [onCall.Shifts[0] with { OnCall = true }] };
        WeekProblem gentle = Week(onCall);
        Assert.DoesNotContain(Planner.Answer(gentle, Need()).Answers, a => a.Visit.Nurse == "N2");
        Assert.Equal(ReasonCode.OnCall, Assert.Single(Planner.Answer(gentle, Need()).RuledOut).Reason.Code);

        WeekProblem pressed = Due(At(0, 8, 30), onCall);
        Assert.Equal("N2", Planner.Answer(pressed, Need()).Answers[0].Visit.Nurse);
    }

    [Fact]
    public void When_nothing_works_today_the_earliest_later_day_is_offered_as_late()
    {
        WeekProblem week = Week() with { Now = At(0, 16, 30) };
        UrgentAnswer best = Planner.Answer(week with { Nurses = [Nurse("N1", 0, 1)] }, Need()).Answers[0];
        Assert.Equal(At(1, 8, 10), best.Visit.Start);
        Assert.False(best.MeetsTarget);
    }

    [Fact]
    public void Two_people_start_together()
    {
        WeekProblem week = Week(Nurse("N2", 0));
        week = week with { Patients = [.. week.Patients.Select(p => p.Id == "U" ? p with { CrewSize = 2 } : p)] };
        UrgentAnswer best = Planner.Answer(week, Need()).Answers[0];
        Assert.NotNull(best.Visit.Second);
        Assert.True(Checker.Check(week, best.Plan).Accepted);
    }

    [Fact]
    public void Care_of_a_replaced_visit_moves_into_the_new_one()
    {
        PlannedVisit later = Told("vu", "U", "N1", At(1, 9), "w");
        WeekProblem week = Week() with { Nurses = [Nurse("N1", 0, 1)], Tasks = [.. Week().Tasks, Task("w", "U", 0, 2)] };
        week = week with { Published = Plan(A, B, C, later) };
        UrgentAnswer best = Planner.Answer(week, new UrgentNeed("U", ["u"], ["vu"])).Answers[0];
        Assert.Equal(["u", "w"], best.Visit.Tasks);
        Assert.Equal(80, best.Visit.Minutes);
        Assert.Equal([new FreedTime("N1", 1, 55, 20)], best.Freed);
    }

    [Theory]
    [InlineData("U", "u", "nowhere", "nowhere")]
    [InlineData("U", "x", null, "x")]
    [InlineData("Q", "u", null, "Q")]
    public void What_the_problem_does_not_know_is_refused_by_name(string patient, string task, string? replaces, string named)
    {
        var need = new UrgentNeed(patient, [task], replaces is null ? [] : [replaces]);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Planner.Answer(Week(), need));
        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_published_plan_there_is_nothing_to_answer_in() =>
        Assert.Throws<ArgumentException>(() => Planner.Answer(Week() with { Published = null }, Need()));

    private static UrgentNeed Need() => new("U", ["u"], []);

    private static WeekProblem Week(params Nurse[] more) => Of(
        [Nurse("N1", 0), .. more],
        [Patient("A", 1), Patient("B", 2), Patient("C", 3), Patient("U", 1)],
        [Task("a", "A"), Task("b", "B"), Task("c", "C"), Task("u", "U") with { WorkMinutes = 40, Critical = true, LateFrom = At(0, 14), TargetBy = At(0, 12) }])
        with
    { Published = Plan(A, B, C), Now = At(0, 7) };

    private static WeekProblem Due(int lateFrom, params Nurse[] more)
    {
        WeekProblem week = Week(more);
        return week with { Tasks = [.. week.Tasks.Select(t => t.Id == "u" ? t with { LateFrom = lateFrom, TargetBy = null } : t)] };
    }

    /// <summary>A morning without gaps: whatever is put in before pushes everybody.</summary>
    private static WeekPlan Full() => Plan(A, B, C with { Start = At(0, 10, 20), ToldFrom = At(0, 10, 20) });

    private static PlannedVisit Told(string id, string patient, string nurse, int start, params string[] tasks) =>
        Visit(id, patient, nurse, start, tasks) with { Promise = PromiseState.Told, ToldFrom = start };
}
