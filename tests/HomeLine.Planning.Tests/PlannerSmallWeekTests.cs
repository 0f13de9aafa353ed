using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests;

/// <summary>Weeks of two or three patients whose best plan can be seen by eye.</summary>
public sealed class PlannerSmallWeekTests
{
    [Fact]
    public void Care_of_one_patient_whose_windows_overlap_is_done_in_one_visit()
    {
        WeekPlan plan = Planned(Of([Nurse("N1", 0, 1, 2)], [Patient("A", 1)], [Task("a", "A", 0, 1), Task("b", "A", 1, 2)]));
        PlannedVisit visit = Assert.Single(plan.Visits);
        Assert.Equal(["a", "b"], visit.Tasks);
        Assert.Equal(At(1, 8, 10), visit.Start);
        Assert.Equal(10 + 30 + 30, visit.Minutes);
    }

    [Fact]
    public void Care_is_not_pulled_in_before_it_opens()
    {
        WeekPlan plan = Planned(Of([Nurse("N1", 0, 1, 2)], [Patient("A", 1)], [Task("a", "A"), Task("b", "A", 2, 2)]));
        Assert.Equal([At(0, 8, 10), At(2, 8, 10)], plan.Visits.Select(v => v.Start));
    }

    [Fact]
    public void With_nothing_else_at_stake_care_is_done_on_its_last_day() =>
        Assert.Equal(At(2, 8, 10), Assert.Single(Planned(Of([Nurse("N1", 0, 1, 2)], [Patient("A", 1)], [Task("a", "A", 0, 2)])).Visits).Start);

    [Fact]
    public void Care_that_is_late_already_is_done_on_the_first_day()
    {
        CareTask late = Task("a", "A") with { LateFrom = -3 * 1440 };
        WeekPlan plan = Planned(Of([Nurse("N1", 0, 1, 2)], [Patient("A", 1)], [late]));
        Assert.Equal(At(0, 8, 10), Assert.Single(plan.Visits).Start);
        Assert.Equal(5 * 100, plan.Score.Risk);
    }

    [Fact]
    public void Neighbours_are_visited_on_one_trip()
    {
        WeekPlan plan = Planned(Of(
            [Nurse("N1", 0, 1, 2)], [Patient("A", 9), Patient("B", 10)], [Task("a", "A", 0, 2), Task("b", "B", 0, 1)]));
        Assert.Single(plan.Visits.Select(v => v.Start / 1440).Distinct());
    }

    [Fact]
    public void Two_people_meet_at_the_door()
    {
        WeekProblem problem = Of(
            [Nurse("N1", 0), Nurse("N2", 0) with { Skills = [], Home = 4 }], [Patient("A", 1) with { CrewSize = 2 }], [Task("a", "A")]);
        PlannedVisit visit = Assert.Single(Planned(problem).Visits);
        Assert.Equal(("N1", "N2", At(0, 8, 30)), (visit.Nurse, visit.Second, visit.Start));
    }

    [Fact]
    public void A_chain_keeps_its_least_separation_and_its_most()
    {
        CareTask second = Task("b", "A", 0, 4) with { After = "a", MinGap = 2 * 1440, MaxGap = 2 * 1440, GapInDays = true };
        WeekPlan plan = Planned(Of([Nurse("N1", 0, 1, 2, 3, 4)], [Patient("A", 1)], [Task("a", "A", 0, 1), second], days: 5));
        Assert.Equal([1, 3], plan.Visits.Select(v => v.Start / 1440));
        Assert.Equal(0, plan.Score.Risk);
    }

    [Fact]
    public void A_draw_waits_for_a_day_with_a_courier()
    {
        WeekProblem problem = Of([Nurse("N1", 0, 1, 2)], [Patient("A", 1)], [Task("a", "A", 0, 2) with { DrawToDropMinutes = 60 }]) with
        {
            DropPoints = [new DropPoint("lab", 0, [At(1, 9)])],
        };

        // Drawn at 08:10, ready at 08:50, at the lab at 09:00 sharp.
        Assert.Equal(At(1, 8, 10), Assert.Single(Planned(problem).Visits).Start);
    }

    [Fact]
    public void The_break_is_kept_between_visits()
    {
        Nurse nurse = Nurse("N1", 0);
        nurse = nurse with { Shifts = [nurse.Shifts[0] with { LunchMinutes = 30, LunchFrom = At(0, 8, 30), LunchTo = At(0, 10) }] };
        WeekPlan plan = Planned(Of([nurse], [Patient("A", 1), Patient("B", 2)], [Task("a", "A"), Task("b", "B")]));

        // The first is left at 09:05 (or 09:15); the break and the ten minutes of road follow.
        Assert.Equal(40, plan.Visits[1].Start - (plan.Visits[0].Start + plan.Visits[0].Minutes + 15));
    }

    [Fact]
    public void Beyond_the_orders_a_visit_is_made_but_counted()
    {
        PatientHome ordered = Patient("A", 1) with { Allowances = [new WeekAllowance(0, 2, 1)] };
        CareTask[] care = [Task("a", "A"), Task("b", "A", 2, 2)];
        Assert.Equal(10, Planned(Of([Nurse("N1", 0, 1, 2)], [ordered], [.. care])).Score.Duties);
        Assert.Equal(0, Planned(Of([Nurse("N1", 0, 1, 2)], [ordered], [care[0], care[1] with { Safety = true }])).Score.Duties);
    }

    [Fact]
    public void Critical_care_comes_before_any_amount_of_other_care()
    {
        Nurse one = Nurse("N1", 0) with { MaxVisitsADay = 1 };
        CareTask critical = Task("c", "C") with { Critical = true, Weight = 1 };
        WeekPlan plan = Planned(Of([one], [Patient("A", 1), Patient("C", 15)], [Task("a", "A") with { Weight = 1_000 }, critical], days: 1));
        Assert.Equal("C", Assert.Single(plan.Visits).Patient);
        Assert.Equal("a", Assert.Single(plan.Unmet).Task);
    }

    [Fact]
    public void Unmet_care_says_which_skill_is_missing_and_who_would_have_time()
    {
        WeekProblem problem = Of([Nurse("N1", 0, 2)], [Patient("A", 1)], [Task("a", "A", 0, 2) with { Skills = ["PORT"] }]);
        UnmetTask unmet = Assert.Single(Planned(problem).Unmet);
        Assert.Equal(
            ["No nurse with PORT licensed in Marrow works on Mon and Wed.", "Nobody works on Tue."],
            unmet.Reasons.Select(r => r.Sentence));
        Relaxation gain = Assert.Single(unmet.Relaxations);
        Assert.Equal((ReasonCode.GainScope, "Nurse N1 has time on Wed but would first need PORT."), (gain.Code, gain.Sentence));
    }

    [Fact]
    public void Unmet_care_says_how_much_overtime_would_place_it()
    {
        // Out 08:00 to 15:05 at the far patient and back needs 495 minutes: 15 more than the shift with its hour of overtime.
        CareTask far = Task("a", "A") with { WorkMinutes = 480, HardLatest = 1_439 };
        UnmetTask unmet = Assert.Single(Planned(Of([Nurse("N1", 0)], [Patient("A", 3)], [far])).Unmet);
        Assert.Equal(ReasonCode.DayFull, Assert.Single(unmet.Reasons).Code);
        Relaxation first = unmet.Relaxations[0];
        Assert.Equal((ReasonCode.Overtime, 25), (first.Code, first.CostMinutes));
    }

    [Fact]
    public void Without_the_nurse_of_the_long_stays_the_plan_says_so()
    {
        WeekProblem problem = DemoWeek.Problem with { Nurses = [.. DemoWeek.Nurses.Where(n => n.Id != "N7")] };
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 300), cancel: TestContext.Current.CancellationToken);
        UnmetTask stay = plan.Unmet.Single(u => u.Task == "P60-1");
        Assert.Equal("No nurse with PICC and PORT and IG licensed in Marrow works on Fri.", Assert.Single(stay.Reasons).Sentence);
        Assert.True(Checker.Check(problem, plan).Accepted);
    }

    [Fact]
    public void A_problem_that_contradicts_itself_is_refused_by_name()
    {
        WeekProblem problem = Of([Nurse("N1", 0)], [Patient("A", 1)], [Task("a", "B")]);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Planned(problem));
        Assert.Contains("Task a names patient B", refused.Message, StringComparison.Ordinal);
    }

    private static WeekPlan Planned(WeekProblem problem)
    {
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 200));
        CheckReport report = Checker.Check(problem, plan);
        Assert.Equal([], report.Findings.Select(f => f.Reason.Sentence));
        Assert.Equal(report.Score, plan.Score);
        return plan;
    }
}
