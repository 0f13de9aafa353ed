using HomeLine.Planning.Checking;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Mending;

/// <summary>The troubles of the demonstration Tuesday, on its published plan. What should happen was worked out by hand; our own scenario.</summary>
public sealed class RedLetterTuesdayTests
{
    private static readonly Lazy<MendedWeek> Absent = new(() =>
        Mend(At(1, "06:45"), new Trouble.NurseOut("N1", Day(1), Day(2))));

    private static readonly Lazy<MendedWeek> CarDied = new(() =>
        Mend(At(1, "10:15"), new Trouble.NurseOut("N4", Minute(1, "10:15"), Day(2))));

    [Fact]
    public void With_a_nurse_out_what_can_wait_least_is_named_first() =>
        Assert.Equal(["P04", "P12", "P06", "P01"], Absent.Value.Broken.Select(b => b.Visit.Patient));

    [Fact]
    public void With_a_nurse_out_all_her_visits_find_somebody_and_nobody_else_is_moved()
    {
        Assert.Empty(Absent.Value.Plan.Unmet);
        Assert.Equal(["P01", "P04", "P06", "P12"], Absent.Value.Calls.Select(c => c.Patient).Order());
        Assert.All(Absent.Value.Broken, b => Assert.Equal(ReasonCode.NurseOut, b.Reason.Code));
        Assert.DoesNotContain(Absent.Value.Plan.Visits, v => v.Nurse == "N1" && v.Start / 1440 == 1);
        Assert.Equal(0, Absent.Value.Score.Critical);
    }

    [Fact]
    public void The_level_is_still_drawn_in_its_minutes()
    {
        PlannedVisit level = Absent.Value.Plan.Visits.Single(v => v.Patient == "P04");
        Assert.InRange(level.Start, Minute(1, "09:30"), Minute(1, "09:55"));
    }

    [Fact]
    public void When_a_car_dies_what_is_due_today_is_done_today_and_the_child_waits_for_Thursday()
    {
        PlannedVisit due = CarDied.Value.Plan.Visits.Single(v => v.Patient == "P05"), child = CarDied.Value.Plan.Visits.Single(v => v.Patient == "P39");
        Assert.Equal(1, due.Start / 1440);
        Assert.NotEqual("N4", due.Nurse);
        Assert.Equal(3, child.Start / 1440);
        Assert.Equal(ReasonCode.TellOtherDay, CarDied.Value.Calls.Single(c => c.Patient == "P39").Reason.Code);
        Assert.Equal(["P05", "P39"], CarDied.Value.Broken.Select(b => b.Visit.Patient));
    }

    [Fact]
    public void The_visit_made_before_the_car_died_stays()
    {
        PlannedVisit done = CarDied.Value.Plan.Visits.Single(v => v.Patient == "P40");
        Assert.Equal(("N4", Minute(1, "08:30")), (done.Nurse, done.Start));
    }

    [Fact]
    public void When_the_pass_closes_the_needle_beyond_it_is_still_changed_on_its_last_day()
    {
        ITravelTimes closed = ((MapTravel)DemoWeek.Problem.Travel).WithClosed(["Larch Pass"]);
        var change = new RoadChange(Minute(2, "12:00"), Day(3), closed);
        WeekProblem problem = At(1, "13:45");
        MendedWeek mended = Mend(problem, new Trouble.Roads(change));
        Assert.Contains("P29", mended.Broken.Select(b => b.Visit.Patient));
        Assert.Equal(2, mended.Plan.Visits.Single(v => v.Patient == "P29").Start / 1440);
        Assert.Empty(mended.Plan.Unmet);
        Assert.Equal([], Checker.Check(problem, mended.Plan, [change]).Findings.Select(f => f.Reason.Sentence));
    }

    [Fact]
    public void A_nurse_running_late_means_one_call_and_nothing_else_moves()
    {
        MendedWeek mended = Mend(At(1, "11:20"), new Trouble.Overrun("P59-Tue", 45));
        FamilyCall call = Assert.Single(mended.Calls);
        Assert.Equal(("P28", Minute(1, "12:24")), (call.Patient, call.After!.Start));
        Assert.Equal(ReasonCode.TellLaterInRange, call.Reason.Code);
        Assert.Empty(mended.Moved);
        string[] changed = [.. DemoWeek.Published.Visits.Where(v => mended.Plan.Visits.Single(t => t.Id == v.Id).Start != v.Start).Select(v => v.Patient)];
        Assert.Equal(["P28"], changed);
    }

    [Fact]
    public void Without_the_only_nurse_for_a_long_stay_it_is_unmet_and_said_why()
    {
        MendedWeek mended = Mend(At(2, "06:30"), new Trouble.NurseOut("N7", Day(2), Day(3)));
        UnmetTask unmet = Assert.Single(mended.Plan.Unmet);
        Assert.Equal("P20-1", unmet.Task);
        Assert.Equal(ReasonCode.SkillMissing, unmet.Reasons[0].Code);
        Assert.Equal(ReasonCode.TellNobody, mended.Calls[0].Reason.Code);
        Assert.Empty(mended.Findings);
    }

    [Fact]
    public void Nothing_broken_changes_nothing()
    {
        MendedWeek mended = Mend(At(1, "06:45"));
        Assert.Equal(DemoWeek.Published.Visits.OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal), mended.Plan.Visits.OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal), Same);
        Assert.Empty(mended.Calls);
        Assert.Equal(0, mended.Score.Disruption);
    }

    [Fact]
    public void Every_repair_is_one_the_checker_accepts()
    {
        foreach (MendedWeek mended in new[] { Absent.Value, CarDied.Value }) Assert.Empty(mended.Findings);
    }

    [Fact]
    public void A_trouble_nobody_knows_is_refused_by_name()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            Mend(At(1, "06:45"), new Trouble.NurseOut("N99", 0, 10)));
        Assert.Contains("N99", refused.Message, StringComparison.Ordinal);
    }

    private static MendedWeek Mend(WeekProblem problem, params Trouble[] troubles) =>
        Planner.Mend(problem, [.. troubles], new MendOptions(), TestContext.Current.CancellationToken);

    private static bool Same(PlannedVisit a, PlannedVisit b) => (a.Id, a.Nurse, a.Start) == (b.Id, b.Nurse, b.Start);

    private static int Day(int day) => day * 1440;

    private static int Minute(int day, string time) => DemoWeek.Minute(day, time);

    private static WeekProblem At(int day, string time) => DemoWeek.Problem with
    {
        Now = Minute(day, time),
        Published = DemoWeek.Published with { Visits = [.. DemoWeek.Published.Visits.OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)] },
    };
}
