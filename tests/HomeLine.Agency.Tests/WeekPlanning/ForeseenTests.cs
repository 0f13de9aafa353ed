using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
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

    /// <summary>P03's dressing is planned for Wednesday 10 March, 13:12.</summary>
    [Theory]
    [InlineData(9)]
    [InlineData(10)]
    public void A_visit_signed_earlier_than_planned_is_not_foreseen_again(int day)
    {
        WeekVisit planned = Dressing();
        LineEvent dressed = Dressed(planned, "made-1", day);
        var signed = new SignedVisit("made", planned.Patient, new LocalDate(2027, 3, day), planned.Id, null, [dressed.Id]);
        AgencyRoster recorded = DemoAgency.Roster with { Events = DemoAgency.Roster.Events.Add(dressed), SignedVisits = [signed] };

        AgencyRoster then = Foreseen.At(recorded, [DemoAgency.Published], DemoAgency.At(day, 12, 0), DemoAgency.At(15, 0, 0));

        Assert.Equal("made-1", Assert.Single(DressingsOf(then, planned.Patient)).Id.Value);
        Assert.DoesNotContain(then.Events, e => e.Id.Value.StartsWith($"foreseen {planned.Id} ", StringComparison.Ordinal));
    }

    [Fact]
    public void Care_in_the_ledger_of_that_day_stands_for_one_planned_visit_and_for_no_other()
    {
        WeekVisit planned = Dressing();
        PlannedWeek twice = DemoAgency.Published with { Visits = DemoAgency.Published.Visits.Add(planned with { Id = "evening", Start = new LocalTime(18, 0) }) };
        AgencyRoster recorded = DemoAgency.Roster with { Events = DemoAgency.Roster.Events.Add(Dressed(planned, "typed-in", 10)) };

        AgencyRoster then = Foreseen.At(recorded, [twice], DemoAgency.At(10, 12, 0), DemoAgency.At(15, 0, 0));

        Assert.Equal(2, DressingsOf(then, planned.Patient).Length);
        Assert.Contains(DressingsOf(then, planned.Patient), e => e.Id.Value.StartsWith("foreseen evening ", StringComparison.Ordinal));
    }

    private static WeekVisit Dressing() => DemoAgency.Published.Visits.Single(v => v.Patient.Value == "P03" && v.Care.Any(c => c.Key.Contains("|Dressing|", StringComparison.Ordinal)));

    private static LineEvent Dressed(WeekVisit planned, string id, int day) => new()
    {
        Id = new EventId(id),
        Patient = planned.Patient,
        Line = new LineId(planned.Care.Select(c => c.Key.Split('|')).First(k => k[1] == "Dressing")[2]),
        Kind = LineEventKind.DressingChanged,
        Performed = CareMoment.Exactly(DemoAgency.At(day, 9, 0), DemoAgency.Roster.Profile.Zone),
        RecordedAt = DemoAgency.At(day, 10, 0),
        Dressing = DressingKind.Film,
    };

    private static LineEvent[] DressingsOf(AgencyRoster roster, PatientId patient) =>
        [.. roster.Events.Where(e => e.Patient == patient && e.Kind == LineEventKind.DressingChanged && e.Performed!.Value.Date >= DemoAgency.FirstDay)];

    [Fact]
    public void This_week_is_planned_from_what_is_recorded_alone() =>
        Assert.Equal(
            WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Needs.Count,
            WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, DemoAgency.Now).Needs.Count);
}
