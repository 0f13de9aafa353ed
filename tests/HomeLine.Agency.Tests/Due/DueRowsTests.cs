using HomeLine.Agency.Due;
using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Tests.Due;

/// <summary>The due list of the demonstration. Invented data.</summary>
public sealed class DueRowsTests
{
    private static readonly DueRow[] Rows = [.. DueRows.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.Published, DemoAgency.Now)];

    [Fact]
    public void The_latest_comes_first_and_says_by_how_much()
    {
        Assert.Equal(Urgency.Late, Rows[0].Urgency);
        Assert.Equal("P30", Rows[0].Patient.Value);
        Assert.Equal("late by 5 days", Rows[0].InWords);
    }

    [Fact]
    public void What_goes_with_a_dressing_shares_its_row()
    {
        DueRow dressing = Rows.Single(r => r.Patient.Value == "P03" && r.Window.Item == CareItem.Dressing);

        Assert.Equal("dressing, securement, length outside", dressing.ItemLabel);
        Assert.Equal("Mon 8 Mar to Wed 10 Mar", dressing.InWords);
        Assert.Equal("Wed 10 Mar 13:12, Juniper Brasslock", dressing.PlannedFor);
    }

    [Fact]
    public void Lumens_with_the_same_window_share_a_row_and_others_do_not()
    {
        Assert.Single(Rows, r => r.Patient.Value == "P03" && r.ItemLabel == "connector, lumens A, B");
        Assert.Equal(2, Rows.Count(r => r.Patient.Value == "P23" && r.Window.Item == CareItem.Connector && r.Window.Line!.Value.Value == "P23-1"));
    }

    [Fact]
    public void A_patient_in_hospital_is_shown_as_on_hold_however_late_the_clock() =>
        Assert.All(Rows.Where(r => r.Patient.Value == "P11"), r => Assert.Equal(Urgency.OnHold, r.Urgency));

    [Fact]
    public void Every_row_that_a_nurse_must_do_this_week_names_its_visit()
    {
        DueRow[] unplanned = [.. Rows.Where(r => r.PlannedFor is null && r.Urgency is Urgency.Late or Urgency.DueToday && r.Window.Owner == PerformerKind.Nurse)];

        Assert.True(unplanned.Length == 0, string.Join("\n", unplanned.Select(r => $"{r.Patient} {r.ItemLabel}")));
    }
}
