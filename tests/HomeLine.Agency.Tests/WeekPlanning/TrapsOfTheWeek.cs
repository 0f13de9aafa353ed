using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.Planning;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>What naive software gets wrong where the clocks meet the week. Invented data of the demonstration.</summary>
public sealed class TrapsOfTheWeek
{
    private static WeekDemand Demand(AgencyRoster roster) => WeekDemand.Of(roster, CareFiles.Of(roster), DemoAgency.FirstDay, 7, DemoAgency.Now);

    private static NurseFile Nurse(string id) => DemoAgency.Roster.Nurses.Single(n => n.Id == id);

    [Fact]
    public void Two_lines_due_on_consecutive_days_can_be_one_visit_and_are_in_the_published_week()
    {
        CareTask[] dressings = [.. Demand(DemoAgency.Roster).Needs.Values
            .Where(n => n.Patient.Value == "P37" && n.Item == CareItem.Dressing).Select(n => n.Task)];

        Assert.Equal(2, dressings.Length);
        Assert.True(dressings.Max(t => t.Opens) < dressings.Min(t => t.LateFrom), "a day lies in both windows");
        Assert.Single(DemoAgency.Published.Visits, v => v.Patient.Value == "P37");
    }

    [Fact]
    public void Recertification_is_care_with_days_of_its_own_and_pulls_the_dressing_into_them()
    {
        CareTask assessment = Demand(DemoAgency.Roster).Needs.Values.Single(n => n.Patient.Value == "P17" && n.Item == CareItem.Recertification).Task;

        // Care started 11 January: days 56 to 60 are 7 to 11 March, so it is late from Friday 12 March 00:00.
        Assert.Equal(4 * PlanCalendar.MinutesADay, assessment.LateFrom);
        Assert.Contains("REC", assessment.Skills);
    }

    /// <summary>P38's idle port is due on Tuesday 9 March.</summary>
    [Theory]
    [InlineData(OrderKind.LongInfusion, 8, false)]
    [InlineData(OrderKind.Teaching, 8, true)]
    [InlineData(OrderKind.LongInfusion, 7, true)]
    public void Only_an_infusion_still_to_come_stands_for_the_flush_of_an_idle_port(OrderKind kind, int day, bool isNeeded)
    {
        AgencyRoster roster = DemoAgency.Roster;
        Line port = roster.Lines.Single(l => l.Patient.Value == "P38" && l.Kind == LineKind.Port);
        var order = new CareOrder { Id = "P38-x", Patient = port.Patient, Line = port.Id, Kind = kind, StartsOn = new LocalDate(2027, 3, 1), Dates = [new LocalDate(2027, 3, day)] };

        WeekDemand demand = Demand(roster with { Orders = roster.Orders.Add(order) });

        Assert.Equal(isNeeded, demand.Needs.Values.Any(n => n.Patient == port.Patient && n.Item == CareItem.PortFlush));
    }

    [Fact]
    public void Of_the_days_looked_at_only_the_week_itself_is_kept()
    {
        WeekDemand two = WeekDemand.Ahead(DemoAgency.Roster, [], DemoAgency.FirstDay, DemoAgency.Now, dayCount: 14);
        WeekPlan plan = Planner.Plan(two.Problem, new PlanOptions(Iterations: 50), cancel: TestContext.Current.CancellationToken);

        PlannedWeek week = PlanInNames.Of(plan, two);

        LocalDate next = DemoAgency.FirstDay.PlusDays(7);
        Assert.Contains(plan.Visits, v => two.Calendar.Date(v.Start / PlanCalendar.MinutesADay) >= next);
        Assert.All(week.Visits, v => Assert.True(v.Day < next));

        // Nothing that is due within the week is put off to the next.
        var made = week.Visits.SelectMany(v => v.Care).Select(c => c.Key).ToHashSet();
        Assert.All(Demand(DemoAgency.Roster).Needs.Values.Where(n => n.Windows[0].LastDay < next), n => Assert.Contains(n.Key, made));
    }

    [Fact]
    public void A_licence_that_ends_on_Wednesday_counts_through_Wednesday()
    {
        AgencyRoster roster = DemoAgency.Roster with
        {
            Nurses = DemoAgency.Roster.Nurses.Replace(Nurse("N1"), Nurse("N1") with { Licences = [new StateLicence("Marrow", new LocalDate(2027, 3, 10))] }),
        };

        Licence licence = Assert.Single(Demand(roster).Problem.Nurses.Single(n => n.Id == "N1").Licences);
        Assert.Equal(2, licence.LastDay);
    }

    [Fact]
    public void A_practical_nurse_with_ports_typed_beside_her_name_is_still_not_sent_to_a_port()
    {
        NurseFile typed = Nurse("N5") with { Skills = [.. Nurse("N5").Skills, "PORT", "REC", "FD"] };

        Assert.Equal(Nurse("N5").Skills, CredentialScope.Within(typed, PolicyBook.Default, DemoAgency.FirstDay));
        Assert.Equal(Nurse("N1").Skills, CredentialScope.Within(Nurse("N1"), PolicyBook.Default, DemoAgency.FirstDay));
    }

    [Fact]
    public void A_level_without_dose_times_is_not_planned_and_says_why()
    {
        CareOrder level = DemoAgency.Roster.Orders.Single(o => o.Kind == OrderKind.DrugLevel && o.Patient.Value == "P04");
        AgencyRoster roster = DemoAgency.Roster with { Orders = DemoAgency.Roster.Orders.Replace(level, level with { DoseTimes = [] }) };
        WeekDemand demand = Demand(roster);

        Assert.DoesNotContain(demand.Needs.Values, n => n.Patient.Value == "P04" && n.Item == CareItem.Labs);
        Assert.Contains(demand.NotPlannable, unmet => unmet.Reasons.Any(r => r.Code == "level-without-dose-times"));
    }

    [Fact]
    public void No_family_is_visited_for_the_daily_set_it_changes_itself()
    {
        ImmutableArray<Infusion> byFamily = [.. DemoAgency.Roster.Infusions.Where(i => i.SetChangedBy == PerformerKind.Caregiver)];

        Assert.NotEmpty(byFamily);
        Assert.DoesNotContain(Demand(DemoAgency.Roster).Needs.Values, n => n.Item == CareItem.Set && byFamily.Any(i => i.Patient == n.Patient));
    }
}
