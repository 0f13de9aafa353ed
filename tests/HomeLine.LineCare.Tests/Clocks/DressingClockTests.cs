using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

public sealed class DressingClockTests
{
    [Theory]
    [InlineData(DressingKind.Film, 8, 10)]
    [InlineData(DressingKind.AntisepticFilm, 8, 10)]
    [InlineData(DressingKind.Gauze, 4, 5)]
    [InlineData(DressingKind.GauzeUnderFilm, 4, 5)]
    public void The_material_decides_the_clock(DressingKind kind, int opens, int last)
    {
        var window = Picc().Dressing(Mar(3), kind: kind).Window(CareItem.Dressing, Mar(4));

        Assert.Equal((Mar(opens), Mar(last)), (window.OpensOn, window.LastDay));
    }

    [Theory]
    [InlineData(DressingKind.GauzeUnderFilm, 7)]
    [InlineData(DressingKind.Gauze, 7)]
    [InlineData(DressingKind.Film, 12)]
    [InlineData(null, 7)]
    public void The_first_dressing_after_insertion_follows_its_material_and_the_unknown_counts_as_gauze(DressingKind? kind, int last)
    {
        var window = Picc().Event(LineEventKind.Inserted, Mar(5), but: e => e with { Dressing = kind }).Window(CareItem.Dressing, Mar(6));

        Assert.Equal(Mar(last), window.LastDay);
        Assert.StartsWith("dressing.first.", window.Because.RuleId, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_gauze_under_film_from_Friday_is_late_on_Monday()
    {
        var window = Picc().Event(LineEventKind.Inserted, Mar(5), but: e => e with { Dressing = DressingKind.GauzeUnderFilm }).Window(CareItem.Dressing, Mar(8));

        Assert.Equal(Mar(7), window.LastDay);
        Assert.True(window.IsLateAt(At(Mar(8), 6)));
    }

    [Fact]
    public void A_line_nobody_ever_recorded_a_dressing_for_is_due_at_the_first_contact_and_never_late()
    {
        var window = Picc().Window(CareItem.Dressing, Mar(8));

        Assert.Equal(WindowStanding.DateUnknown, window.Standing);
        Assert.False(window.IsLateAt(At(Mar(28), 6)));
        Assert.Contains("date unknown", window.Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_healed_tunneled_line_without_dressing_has_a_site_check_and_no_dressing_clock()
    {
        var given = new Given().Line(LineKind.Tunneled, 1, securement: SecurementKind.None, but: l => l with { ExitSiteHealed = true })
            .Event(LineEventKind.SiteChecked, Mar(4)).Connector("A", Mar(4));

        Assert.Empty(given.Windows(CareItem.Dressing, Mar(8)));
        Assert.Empty(given.Windows(CareItem.OutsideLength, Mar(8)));
        Assert.Equal((Mar(9), Mar(11)), (given.Window(CareItem.SiteCheck, Mar(8)).OpensOn, given.Window(CareItem.SiteCheck, Mar(8)).LastDay));
        Assert.Equal(Mar(11), given.Window(CareItem.Connector, Mar(8)).LastDay);
    }

    [Fact]
    public void A_nurse_who_changes_the_connector_has_looked_at_the_site() =>
        Assert.Equal(Mar(11), new Given().Line(LineKind.Tunneled, 1, but: l => l with { ExitSiteHealed = true }).Connector("A", Mar(4))
            .Window(CareItem.SiteCheck, Mar(8)).LastDay);

    [Fact]
    public void No_dressing_on_a_site_that_is_not_healed_is_due_now_and_asked_about()
    {
        var given = new Given().Line(LineKind.Tunneled, 1).Dressing(Mar(8), 9, kind: DressingKind.None);

        Assert.Equal((WindowStanding.CutShort, Mar(8)), (given.Window(CareItem.Dressing, Mar(8), 12).Standing, given.Window(CareItem.Dressing, Mar(8), 12).LastDay));
        Assert.Contains(given.AnswerAt(Mar(8), 12).Decisions, d => d.Code == DecisionCodes.NoDressing);
    }

    [Theory]
    [InlineData(SecurementKind.Adhesive, 1)]
    [InlineData(SecurementKind.Sutured, 0)]
    [InlineData(SecurementKind.SubcutaneousAnchor, 0)]
    [InlineData(SecurementKind.None, 0)]
    public void Only_adhesive_securement_is_ever_due(SecurementKind kind, int windows) =>
        Assert.Equal(windows, Picc(1, kind).Dressing(Mar(3)).Windows(CareItem.Securement, Mar(8)).Length);

    [Fact]
    public void After_an_adhesive_injury_a_dressing_opens_only_on_its_last_day()
    {
        var window = Picc().But(c => c with { Risks = RiskFactors.AdhesiveInjury }).Dressing(Mar(2)).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(9), Mar(9)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void Gauze_over_a_port_needle_runs_48_elapsed_hours_beside_the_needle()
    {
        var given = Port().Event(LineEventKind.PortAccessed, Mar(2), 10, 0, e => e with { Dressing = DressingKind.Gauze });

        Assert.Equal(At(Mar(4), 10), given.Window(CareItem.Dressing, Mar(3)).LateFrom);
        Assert.Equal(Mar(9), given.Window(CareItem.PortNeedle, Mar(3)).LastDay);
        Assert.Empty(given.AgencyRule("dressing.gauze.wings.countsasfilm", 1, "switch", new LocalDate(2026, 1, 1)).Windows(CareItem.Dressing, Mar(3)));
    }

    [Fact]
    public void The_next_one_after_this_one_is_told_for_planning()
    {
        Assert.Equal(new Repeat(5, 7, ClockBasis.Date), Picc().Dressing(Mar(3)).Window(CareItem.Dressing, Mar(8)).Next);
        Assert.Equal(new Repeat(1, 2, ClockBasis.Date), Picc().Dressing(Mar(7), kind: DressingKind.Gauze).Window(CareItem.Dressing, Mar(8)).Next);
        Assert.Equal((Mar(11), Mar(12)), Picc().Dressing(Mar(7), kind: DressingKind.Gauze).Window(CareItem.Dressing, Mar(8)).After(Mar(10)));
    }

    [Fact]
    public void Each_window_says_which_rule_made_it_in_one_sentence()
    {
        var reason = Picc().Dressing(Mar(3)).Window(CareItem.Dressing, Mar(8)).Because;

        Assert.Equal(("dressing.film.max", "7 days", PolicyLevel.Default), (reason.RuleId, reason.RuleValue, reason.Level));
        Assert.Equal((new EventId("E1"), (LocalDate?)Mar(3)), (reason.Anchor!.Value, reason.AnchorDate));
        Assert.NotEmpty(reason.Source);
    }
}
