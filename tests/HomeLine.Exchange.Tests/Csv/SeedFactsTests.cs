using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>
/// What the clocks say about the demonstration agency on Monday 2027-03-08 06:00. The dates were counted by hand from the last dressings
/// and the policy in force; intervals themselves are tested where the clocks are.
/// </summary>
public class SeedFactsTests
{
    [Fact]
    public void Sixty_one_lines_carry_a_dressing_clock() =>
        Assert.Equal(61, SeedDue.Dressings.Select(window => window.Line).Distinct().Count());

    [Theory]
    [InlineData("P09", 1)]
    [InlineData("P31", 3)]
    [InlineData("P30", 5)]
    public void Three_dressings_are_late_by_days(string patient, int days)
    {
        DueWindow dressing = Assert.Single(SeedDue.Of(patient).Windows, window => window.Item == CareItem.Dressing);
        Assert.True(dressing.IsLateAt(SeedDue.Now));
        Assert.Equal(days, Period.DaysBetween(dressing.LastDay, SeedDue.Monday));
    }

    [Fact]
    public void No_other_dressing_is_late() => Assert.Equal(
        ["P09", "P30", "P31"],
        SeedDue.Dressings.Where(window => window.IsLateAt(SeedDue.Now)).Select(window => window.Patient.Value).Distinct().Order());

    [Fact]
    public void P11_is_due_on_Monday_but_on_hold_in_hospital()
    {
        Assert.Equal("hospital", SeedDue.Of("P11").OnHold?.Reason);
        Assert.Equal(SeedDue.Monday, Assert.Single(SeedDue.Of("P11").Windows, window => window.Item == CareItem.Dressing).LastDay);
    }

    [Theory]
    [InlineData(8, 4)]
    [InlineData(9, 8)]
    [InlineData(10, 13)]
    [InlineData(11, 18)]
    [InlineData(12, 11)]
    [InlineData(13, 3)]
    [InlineData(14, 1)]
    public void Last_acceptable_dressing_days_of_the_week(int day, int lines) => Assert.Equal(
        lines,
        SeedDue.Dressings.Where(window => window.LastDay == new LocalDate(2027, 3, day)).Select(window => window.Line).Distinct().Count());

    [Theory]
    [InlineData(9, "P38")]
    [InlineData(10, "P20 P45 P56")]
    [InlineData(11, "P10 P50")]
    [InlineData(12, "P21 P43 P60")]
    [InlineData(13, "P25")]
    [InlineData(16, "P52")]
    [InlineData(18, "P44")]
    [InlineData(20, "P48")]
    public void Last_days_of_idle_port_flushes(int day, string patients) => Assert.Equal(
        patients.Split(' '),
        SeedDue.Windows.Where(window => window.Item == CareItem.PortFlush && window.LastDay == new LocalDate(2027, 3, day))
            .Select(window => window.Patient.Value).Order());

    [Fact]
    public void There_are_thirteen_idle_ports() => Assert.Equal(13, SeedDue.Windows.Count(window => window.Item == CareItem.PortFlush));

    [Fact]
    public void The_flush_of_P52_rides_this_week_and_those_of_P44_and_P48_do_not()
    {
        string[] flushed = [.. SeedDue.Demand.Needs.Values.Where(need => need.Item == CareItem.PortFlush).Select(need => need.Patient.Value)];
        Assert.Contains("P52", flushed);
        Assert.DoesNotContain("P44", flushed);
        Assert.DoesNotContain("P48", flushed);
    }

    [Fact]
    public void No_set_of_parenteral_nutrition_is_a_nurse_visit()
    {
        var nutrition = SeedFiles.Roster.Infusions
            .Where(infusion => infusion.Kind == InfusionKind.ParenteralNutrition).Select(infusion => infusion.Line).ToHashSet();
        Assert.DoesNotContain(SeedDue.Windows, window =>
            window.Item == CareItem.Set && window.Owner == PerformerKind.Nurse && nutrition.Contains(window.Line!.Value));
    }

    [Fact]
    public void The_only_set_a_nurse_changes_is_the_inotrope_of_P23() => Assert.Equal(
        ["P23"],
        SeedDue.Windows.Where(window => window is { Item: CareItem.Set, Owner: PerformerKind.Nurse }).Select(window => window.Patient.Value));

    [Fact]
    public void The_set_of_P23_may_be_changed_from_Sunday_14_00_and_is_late_from_Monday_14_00()
    {
        DueWindow set = Assert.Single(SeedDue.Of("P23").Windows, window => window.Item == CareItem.Set);
        DateTimeZone zone = SeedFiles.Roster.Profile.Zone;
        Assert.Equal(new LocalDateTime(2027, 3, 7, 14, 0), set.Opens.InZone(zone).LocalDateTime);
        Assert.Equal(new LocalDateTime(2027, 3, 8, 14, 0), set.LateFrom.InZone(zone).LocalDateTime);
    }

    [Theory]
    [InlineData("P13")]
    [InlineData("P27")]
    [InlineData("P11")]
    public void Patients_without_a_visit_need_none_of_a_nurse_this_week(string patient) =>
        Assert.DoesNotContain(SeedDue.Demand.Needs.Values, need => need.Patient.Value == patient);

    [Fact]
    public void P19_gets_doses_and_the_removal_and_no_dressing_change() => Assert.Equal(
        ["P19-dose", "P19-dose", "P19-dose", "P19-dose", "P19-removal"],
        SeedDue.Demand.Needs.Values.Where(need => need.Patient.Value == "P19").Select(need => need.Windows[0].Order).Order());

    [Fact]
    public void The_lapsed_validation_of_P28_leaves_the_dressing_to_the_nurse() =>
        Assert.Equal(PerformerKind.Nurse, Assert.Single(SeedDue.Of("P28").Windows, window => window.Item == CareItem.Dressing).Owner);

    [Fact]
    public void P40_is_under_two_months_until_18_March() =>
        Assert.Equal(new LocalDate(2027, 3, 18), SeedFiles.Roster.Patients.Single(patient => patient.Id.Value == "P40").BornOn!.Value.PlusMonths(2));

    [Fact]
    public void P24_asks_for_a_decision_about_the_outside_length() =>
        Assert.Contains(SeedDue.Of("P24").Decisions, decision => decision.Sentence.Contains("2 cm", StringComparison.Ordinal));

    [Fact]
    public void Everything_a_visit_does_is_a_need_of_that_patient()
    {
        var known = SeedDue.Demand.Needs.Values.Select(need => need.Key).ToHashSet();
        Assert.Equal([], SeedFiles.Week.Visits.SelectMany(visit => visit.Care).Select(care => care.Key).Except(known));
    }

    [Fact]
    public void Every_need_of_the_week_is_in_a_visit()
    {
        var planned = SeedFiles.Week.Visits.SelectMany(visit => visit.Care).Select(care => care.Key).ToHashSet();
        Assert.Equal([], SeedDue.Demand.Needs.Values.Select(need => need.Key).Except(planned));
    }

    [Fact]
    public void Minutes_in_the_home_are_the_largest_setup_plus_all_the_work() =>
        Assert.All(SeedFiles.Week.Visits, visit => Assert.Equal(visit.Minutes, MinutesOf(visit)));

    [Fact]
    public void Every_nurse_has_the_skills_and_the_licence_of_her_visits() => Assert.All(SeedFiles.Week.Visits, visit =>
    {
        var nurse = SeedFiles.Roster.Nurses.Single(one => one.Id == visit.Nurse);
        var patient = SeedFiles.Roster.Patients.Single(one => one.Id == visit.Patient);
        Assert.Empty(NeedsOf(visit).SelectMany(need => need.Task.Skills).Except(nurse.Skills));
        Assert.Contains(nurse.Licences, licence => licence.State == patient.State);
    });

    private static IEnumerable<CareNeed> NeedsOf(WeekVisit visit) => visit.Care.Select(care =>
        SeedDue.Demand.Needs.Values.First(need => need.Key == care.Key));

    private static int MinutesOf(WeekVisit visit) =>
        NeedsOf(visit).Max(need => need.Task.SetupMinutes) + NeedsOf(visit).Sum(need => need.Task.WorkMinutes);
}
