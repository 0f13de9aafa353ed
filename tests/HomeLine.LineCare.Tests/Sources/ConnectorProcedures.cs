using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>
/// Needleless connectors, second hand throughout ("one published policy says so"): INS Infusion Therapy Standards of Practice 2021, Standard 36, as restated
/// in open texts: no more often than every 96 hours; before a blood culture; when removed for any reason or with blood inside.
/// Weekly at most: a hospital home-infusion leaflet 2015.
/// </summary>
public sealed class ConnectorProcedures
{
    [Fact]
    public void Not_more_often_than_96_hours_and_at_least_weekly()
    {
        var window = Picc().Connector("A", Mar(3), 14).Window(CareItem.Connector, Mar(8));

        Assert.Equal(96, (window.Opens - At(Mar(3), 14)).TotalHours);
        Assert.Equal(Mar(10), window.LastDay);
    }

    [Fact]
    public void A_routine_draw_alone_is_no_reason_to_change() =>
        Assert.Equal(Mar(10), Picc().Connector("A", Mar(3)).Event(LineEventKind.BloodDrawn, Mar(5), but: e => e with { LumensUsed = ["A"] })
            .Window(CareItem.Connector, Mar(8)).LastDay);

    [Fact]
    public void Blood_left_inside_is_due_whatever_the_floor_says() =>
        Assert.Equal(WindowStanding.CutShort, Picc().Connector("A", Mar(8)).Event(LineEventKind.ConnectorCompromised, Mar(9), but: e => e with { LumensUsed = ["A"] })
            .Window(CareItem.Connector, Mar(9), 12).Standing);
}
