using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Reserve;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Reserve;

/// <summary>A week that keeps free time, worked out by hand: one nurse at place 0, seven people at place 1, ten minutes away. Invented data.</summary>
public sealed class PlannerReserveTests
{
    private static readonly ReserveRules OneEach = new(1, 75);

    [Fact]
    public void Care_that_may_wait_a_day_makes_room_and_only_driving_is_paid_for_it()
    {
        // Seven visits of 40 minutes, 15 of writing, 5 to the next door: on one day they end at 15:15, 45 minutes before four. That is 210 + 50 minutes of work and no slot. With one
        // of them on the other day both days have a slot, for 210 + 45 + 20.
        WeekProblem week = Seven(lastDay: 1);
        ReservedWeek reserved = Planned(week);

        Assert.Equal(260, Planner.Plan(week, new PlanOptions(1, 500), cancel: Cancel).Score.Work);
        Assert.Equal((1, 0), (reserved.MissingWithout, reserved.Missing));
        Assert.Equal((275L, 15L), (reserved.Plan.Score.Work, reserved.WorkMinutes));
        Assert.All(reserved.Days, d => Assert.True(d.Free >= 1));
    }

    [Fact]
    public void What_is_left_of_the_stand_ins_is_free_time_and_no_waiting()
    {
        ReservedWeek reserved = Planned(Seven(lastDay: 1));

        // Work is visits and driving to the last minute, so nobody waits anywhere, and nobody but the seven is visited.
        CheckReport report = Checker.Check(Seven(lastDay: 1), reserved.Plan);
        Assert.Equal(report.Score.Work, (30 * report.Figures.Visits) + report.Figures.DrivingMinutes);
        Assert.Equal(7, report.Figures.Visits);
        Assert.Empty(report.Findings);
        Assert.Equal(report.Score, reserved.Plan.Score);
    }

    [Fact]
    public void Care_is_never_late_for_it_and_the_day_says_what_is_missing()
    {
        WeekProblem week = Seven(lastDay: 0);
        ReservedWeek reserved = Planned(week);

        Assert.Equal(Planner.Plan(week, new PlanOptions(1, 500), cancel: Cancel).Score, reserved.Plan.Score);
        Assert.Equal([1, 0], reserved.Days.Select(d => d.Missing));
    }

    [Fact]
    public void Where_enough_is_free_anyway_the_plan_is_the_one_made_without()
    {
        WeekProblem week = Seven(lastDay: 1) with { Nurses = [SmallWeek.Nurse("N1", 0, 1), SmallWeek.Nurse("N2", 0, 1)] };

        Assert.Equal(Planner.Plan(week, new PlanOptions(1, 500), cancel: Cancel).Visits.Select(v => (v.Id, v.Nurse, v.Start)), Planned(week, new ReserveRules(3, 75)).Plan.Visits.Select(v => (v.Id, v.Nurse, v.Start)));
    }

    [Fact]
    public void Nobody_on_call_counts_and_where_nobody_works_nothing_is_asked()
    {
        Nurse onCall = SmallWeek.Nurse("N2", 0, 1, 2);
        WeekProblem week = Seven(lastDay: 1) with { DayCount = 3, Nurses = [SmallWeek.Nurse("N1", 0, 1), onCall with { Shifts = [.. onCall.Shifts.Select(s => s with { OnCall = true })] }] };

        Assert.Equal([1, 1, 0], Planned(week).Days.Select(d => d.Asked));
        Assert.All(Planned(week).Plan.Visits, v => Assert.Equal("N1", v.Nurse));
    }

    [Fact]
    public void A_patient_may_be_called_like_a_stand_in()
    {
        WeekProblem week = Seven(lastDay: 1);
        week = week with
        {
            Patients = week.Patients.SetItem(0, week.Patients[0] with { Id = "stand-in 0 0" }),
            Tasks = week.Tasks.SetItem(0, week.Tasks[0] with { Patient = "stand-in 0 0" }),
        };

        Assert.Contains(Planned(week).Plan.Visits, v => v.Patient == "stand-in 0 0");
        Assert.Equal(0, Planned(week).Missing);
    }

    [Fact]
    public void While_the_reserve_is_looked_for_the_plan_that_stands_is_told()
    {
        var told = new List<PlanProgress>();
        ReservedWeek reserved = Planner.PlanWithReserve(Seven(lastDay: 1), new PlanOptions(1, 500), OneEach, new Told(told.Add), Cancel);

        Assert.Contains(told, p => p.ForReserve);
        Assert.All(told.Where(p => p.ForReserve), p => Assert.Equal((260, 7, 0), (p.Best.Work, p.Visits, p.UnmetTasks)));
        Assert.Equal(275, reserved.Plan.Score.Work);
    }

    [Fact]
    public void Stopped_while_the_reserve_is_looked_for_the_plan_that_stands_is_the_answer()
    {
        using var stop = new CancellationTokenSource();
        ReservedWeek reserved = Planner.PlanWithReserve(Seven(lastDay: 1), new PlanOptions(1, 500), OneEach, new Told(p => { if (p.ForReserve) stop.Cancel(); }), stop.Token);

        Assert.Equal((260, 1), (reserved.Plan.Score.Work, reserved.Missing));
    }

    [Fact]
    public void A_wish_left_out_is_a_duty_and_never_makes_care_late()
    {
        // The day has room for one of two visits of six hours.
        CareTask Long(string id) => SmallWeek.Task(id, id) with { WorkMinutes = 350, HardLatest = 1439 };
        WeekProblem week = SmallWeek.Of(
            [SmallWeek.Nurse("N1", 0)],
            [SmallWeek.Patient("P1", 1), SmallWeek.Patient("P2", 1)],
            [Long("P1") with { Weight = 0, LateFrom = int.MaxValue, LeftOutDuty = 1_000 }, Long("P2") with { Weight = 1 }],
            days: 1);
        WeekPlan plan = Planner.Plan(week, new PlanOptions(1, 200), cancel: Cancel);

        Assert.Equal("P2", Assert.Single(plan.Visits).Patient);
        Assert.Equal((0L, 0L, 1_000L), (plan.Score.Critical, plan.Score.Risk, plan.Score.Duties));
        Assert.Equal(plan.Score, Checker.Check(week, plan).Score);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static ReservedWeek Planned(WeekProblem week, ReserveRules? rules = null) => Planner.PlanWithReserve(week, new PlanOptions(1, 500), rules ?? OneEach, cancel: Cancel);

    private static WeekProblem Seven(int lastDay)
    {
        string[] people = [.. Enumerable.Range(1, 7).Select(p => $"P{p}")];
        return SmallWeek.Of(
            [SmallWeek.Nurse("N1", 0, 1)],
            [.. people.Select(p => SmallWeek.Patient(p, 1))],
            [.. people.Select(p => SmallWeek.Task("T" + p, p, lastDay: lastDay))],
            days: 2);
    }

    private sealed class Told(Action<PlanProgress> then) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => then(value);
    }
}
