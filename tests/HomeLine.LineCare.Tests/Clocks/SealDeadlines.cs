using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

/// <summary>Classes and deadlines of a broken seal: our own defaults; that it must be changed at once is published (CDC 2017, carried-over line).</summary>
public sealed class SealDeadlines
{
    private static Given Film => Picc().Dressing(Mar(7));

    [Theory]
    [InlineData(SealFinding.SiteExposed, 1)]
    [InlineData(SealFinding.WetThrough, 1)]
    [InlineData(SealFinding.Soiled, 1)]
    [InlineData(SealFinding.Off, 1)]
    [InlineData(SealFinding.Off | SealFinding.OuterCornerOnly, 1)]
    [InlineData(SealFinding.EdgeLifted, 2)]
    [InlineData(SealFinding.Moisture, 2)]
    [InlineData(SealFinding.OuterCornerOnly | SealFinding.Moisture, 2)]
    [InlineData(SealFinding.None, 2)]
    [InlineData(SealFinding.OuterCornerOnly, 3)]
    public void The_finding_decides_the_class(SealFinding finding, int expected) =>
        Assert.Equal(expected, Film.Seal(finding, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10).SealClass);

    [Fact]
    public void Each_risk_raises_the_class_by_one()
    {
        Assert.Equal(1, ClassWith(c => c with { Risks = RiskFactors.ParenteralNutrition }));
        Assert.Equal(1, ClassWith(c => c with { Risks = RiskFactors.LowWhiteCount }));
        Assert.Equal(1, ClassWith(c => c with { Risks = RiskFactors.RecentInfection }));
        Assert.Equal(1, ClassWith(c => c with { Risks = RiskFactors.InotropeRunning }));
        Assert.Equal(1, ClassWith(c => c with { BornOn = new(2026, 6, 1) }));
        Assert.Equal(2, ClassWith(c => c with { BornOn = new(2025, 6, 1) }));
        Assert.Equal(2, ClassWith(c => c with { Risks = RiskFactors.AdhesiveInjury | RiskFactors.ChlorhexidineAllergy }));
        Assert.Equal(1, ClassWith(c => c with { Lines = [c.Lines[0] with { Kind = LineKind.Tunneled, InsertedOn = new(2027, 2, 17) }] }));
        Assert.Equal(2, ClassWith(c => c with { Lines = [c.Lines[0] with { Kind = LineKind.Tunneled, InsertedOn = new(2027, 2, 16) }] }));

        static int ClassWith(Func<PatientCare, PatientCare> risk) =>
            Film.But(risk).Seal(SealFinding.EdgeLifted, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10).SealClass;
    }

    [Fact]
    public void The_class_is_never_raised_beyond_the_first() =>
        Assert.Equal(new SealClass(1, 1, ""), SealClass.Of(
            SealFinding.Off, Film.But(c => c with { Risks = RiskFactors.ParenteralNutrition }).Care, null, PolicyBook.Default, Mar(9)));

    [Fact]
    public void The_first_class_ends_with_the_day_when_that_is_sooner()
    {
        var window = Film.Seal(SealFinding.Off, Mar(9), 21, 40).Window(CareItem.Dressing, Mar(9), 22);

        Assert.Equal(Start(Mar(10)), window.LateFrom);
        Assert.Equal(Start(Mar(10)), window.Target);
        Assert.Equal(Mar(9), window.LastDay);
    }

    [Fact]
    public void The_second_class_ends_with_the_day_of_the_report()
    {
        var window = Film.Seal(SealFinding.EdgeLifted, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10);

        Assert.Equal((At(Mar(9), 17), Start(Mar(10))), (window.Target, window.LateFrom));
    }

    [Fact]
    public void The_third_class_has_24_hours_and_aims_at_the_same_day()
    {
        var window = Film.Seal(SealFinding.OuterCornerOnly, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10);

        Assert.Equal((Start(Mar(10)), At(Mar(10), 9)), (window.Target, window.LateFrom));
    }

    [Fact]
    public void Due_tomorrow_anyway_does_not_postpone_it() =>
        Assert.Equal(Start(Mar(10)), Picc().Dressing(Mar(3)).Seal(SealFinding.EdgeLifted, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10).LateFrom);

    [Fact]
    public void A_dressing_that_was_late_already_stays_late() =>
        Assert.True(Picc().Dressing(Mar(1)).Seal(SealFinding.OuterCornerOnly, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10).IsLateAt(At(Mar(9), 10)));

    [Fact]
    public void Two_reports_of_one_dressing_keep_the_more_urgent_deadline() =>
        Assert.Equal(At(Mar(9), 18), Film.Seal(SealFinding.OuterCornerOnly, Mar(9), 9).Seal(SealFinding.Soiled, Mar(9), 10)
            .Window(CareItem.Dressing, Mar(9), 11).LateFrom);

    [Fact]
    public void A_change_before_the_report_does_not_close_it() =>
        Assert.Equal(WindowStanding.CutShort, Picc().Seal(SealFinding.EdgeLifted, Mar(9), 9).Dressing(Mar(9), 8).Window(CareItem.Dressing, Mar(9), 10).Standing);

    [Fact]
    public void A_report_on_a_removed_line_opens_nothing_but_the_site_check() =>
        Assert.Equal(CareItem.RemovalSiteCheck, Assert.Single(
            Film.Event(LineEventKind.Removed, Mar(8)).Seal(SealFinding.Off, Mar(9), 9).AnswerAt(Mar(9), 10).Windows, w => w.Line is not null).Item);

    [Fact]
    public void Over_a_port_needle_the_whole_composite_is_due()
    {
        var window = Port().Event(LineEventKind.PortAccessed, Mar(7)).Seal(SealFinding.WetThrough, Mar(9), 9).Window(CareItem.PortNeedle, Mar(9), 10);

        Assert.Equal((WindowStanding.CutShort, 1), (window.Standing, window.SealClass));
    }

    [Fact]
    public void A_validated_caregiver_may_do_it_at_once_and_anybody_else_needs_the_nurse()
    {
        Assert.Equal(PerformerKind.Nurse, Film.Seal(SealFinding.EdgeLifted, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10).Owner);
        Assert.Equal(PerformerKind.Caregiver, Film.Validated(CareItem.Dressing, Mar(31)).Seal(SealFinding.EdgeLifted, Mar(9), 9)
            .Window(CareItem.Dressing, Mar(9), 10).Owner);
    }

    [Fact]
    public void A_seal_broken_after_an_unknown_date_still_has_its_deadline() =>
        Assert.Equal(At(Mar(9), 17), Picc().Seal(SealFinding.Off, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10).LateFrom);
}
