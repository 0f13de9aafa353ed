using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
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
    public void Nothing_is_late_at_the_start_of_a_week_that_follows_a_kept_plan() =>
        Assert.DoesNotContain(Next(DemoAgency.Published).Needs.Values, n => n.Task.LateFrom <= 0 && n.Patient.Value != "P11");

    [Fact]
    public void Without_a_published_week_last_weeks_care_is_missing_and_so_late() =>
        Assert.Contains(Next().Needs.Values, n => n.Task.LateFrom <= 0);

    [Fact]
    public void A_line_promised_to_come_out_needs_nothing_more() =>
        Assert.DoesNotContain(Next(DemoAgency.Published).Needs.Values, n => n.Patient.Value == "P19");

    [Fact]
    public void This_week_is_planned_from_what_is_recorded_alone() =>
        Assert.Equal(
            WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Needs.Count,
            WeekDemand.Ahead(DemoAgency.Roster, [DemoAgency.Published], DemoAgency.FirstDay, DemoAgency.Now).Needs.Count);
}
