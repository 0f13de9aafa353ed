using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>Planning a later week counts what is promised until then as done. Invented data.</summary>
public sealed class ForeseenTests
{
    private static readonly LocalDate NextWeek = new(2027, 3, 15);

    private static WeekDemand Next(params PlannedWeek[] promised) => WeekDemand.Ahead(DemoAgency.Roster, [.. promised], NextWeek, DemoAgency.Now);

    [Fact]
    public void A_dressing_promised_for_Wednesday_is_next_due_from_day_5_to_7()
    {
        CareNeed dressing = Next(DemoAgency.Published).Needs.Values.Single(n => n.Patient.Value == "P03" && n.Item == CareItem.Dressing);

        Assert.Equal((0, 3 * 1440), (dressing.Task.Opens, dressing.Task.LateFrom));
    }

    [Fact]
    public void A_chain_due_on_the_first_day_comes_round_until_the_week_is_covered()
    {
        CareNeed[] gauze = [.. Next(DemoAgency.Published).Needs.Values.Where(n => n.Patient.Value == "P06" && n.Item == CareItem.Dressing).OrderBy(n => n.Task.LateFrom)];

        Assert.Equal([1, 3, 5, 7], gauze.Select(n => n.Task.LateFrom / 1440));
        Assert.All(gauze, n => Assert.True(n.Task.Opens < n.Task.LateFrom));
    }

    [Fact]
    public void Nothing_is_late_at_the_start_of_a_week_that_follows_a_kept_plan() =>
        Assert.DoesNotContain(Next(DemoAgency.Published).Needs.Values, n => n.Task.LateFrom <= 0 && n.Patient.Value != "P11");

    [Fact]
    public void Without_a_published_week_last_weeks_care_is_missing_and_so_late() =>
        Assert.Contains(Next().Needs.Values, n => n.Task.LateFrom <= 0);

    [Fact]
    public void A_line_promised_to_come_out_needs_nothing_more() =>
        Assert.DoesNotContain(Next(DemoAgency.Published).Needs.Values, n => n.Patient.Value == "P19");

    [Fact]
    public void A_clinic_whose_report_is_overdue_is_not_counted_on()
    {
        Instant thursdayNight = DemoAgency.At(11, 19, 0);

        Assert.Contains(
            WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, thursdayNight).Needs.Values,
            n => n.Patient.Value == "P13" && n.Item == CareItem.Dressing);
    }

    [Fact]
    public void A_plan_of_the_running_week_starts_from_what_it_promises_and_is_never_worse()
    {
        WeekDemand demand = WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, DemoAgency.Now);

        WeekPlan plan = Planner.Plan(demand.Problem, new PlanOptions(1, 50), null, TestContext.Current.CancellationToken);

        Assert.Equal(68, demand.Problem.Published!.Visits.Length);
        Assert.True(Checker.Check(demand.Problem, plan).Score <= Checker.Check(demand.Problem, demand.Problem.Published).Score);
        Assert.True(Checker.Check(demand.Problem, plan).Accepted);
    }

    [Fact]
    public void What_starts_within_the_hour_stays_when_the_running_week_is_planned_anew()
    {
        WeekDemand demand = WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, DemoAgency.At(9, 7, 52));

        WeekPlan plan = Planner.Plan(demand.Problem, new PlanOptions(1, 50), null, TestContext.Current.CancellationToken);

        PlannedVisit imminent = plan.Visits.Single(v => v.Patient == "P44");
        Assert.Equal(("N3", 1440 + (8 * 60) + 7), (imminent.Nurse, imminent.Start));
    }

    [Fact]
    public void This_week_is_planned_from_what_is_recorded_alone() =>
        Assert.Equal(
            WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Needs.Count,
            WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, DemoAgency.Now).Needs.Count);
}
