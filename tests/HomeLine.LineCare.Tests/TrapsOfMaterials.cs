using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests;

/// <summary>What naive software gets wrong about dressings, connectors, needles and what touches the skin. Common practice, no source, unless a
/// test says otherwise.</summary>
public sealed class TrapsOfMaterials
{
    [Fact]
    public void Gauze_beneath_a_film_runs_for_two_days_and_not_for_seven() =>
        Assert.Equal(Mar(5), Picc().Dressing(Mar(3), kind: DressingKind.GauzeUnderFilm).Window(CareItem.Dressing, Mar(4)).LastDay);

    [Fact]
    public void The_first_dressing_after_insertion_is_not_an_ordinary_film()
    {
        var first = Picc().Event(LineEventKind.Inserted, Mar(5), but: e => e with { Dressing = DressingKind.GauzeUnderFilm }).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(7), "dressing.first.gauze.max"), (first.LastDay, first.Because.RuleId));
        Assert.True(first.IsLateAt(At(Mar(8), 6)));
    }

    [Fact]
    public void A_nutrition_sets_daily_change_leaves_the_connector_alone()
    {
        var given = Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Validated(CareItem.Set, Mar(31)).Connector("A", Mar(4), 14);
        for (var day = 4; day <= 7; day++)
            given = given.Event(LineEventKind.SetChanged, Mar(day), 20, but: e => e with { LumensUsed = ["A"], Performer = PerformerKind.Caregiver, PerformerName = "spouse" });

        var connector = given.Window(CareItem.Connector, Mar(8), lumen: "A");
        Assert.Equal((Mar(4), Mar(11)), (connector.Because.AnchorDate, connector.LastDay));
    }

    [Fact]
    public void A_connector_is_not_changed_at_every_draw_but_when_blood_stays_and_before_a_culture()
    {
        var given = Picc().Connector("A", Mar(4), 14);
        static LineEvent OnA(LineEvent entry) => entry with { LumensUsed = ["A"] };

        Assert.Equal(Mar(11), given.Event(LineEventKind.BloodDrawn, Mar(6), but: OnA).Window(CareItem.Connector, Mar(8)).LastDay);
        Assert.Equal(Mar(6), given.Event(LineEventKind.ConnectorCompromised, Mar(6), but: OnA).Window(CareItem.Connector, Mar(6), 12).LastDay);
        Assert.Equal(Mar(13), given.Event(LineEventKind.BloodCultureDrawn, Mar(6), but: OnA).Window(CareItem.Connector, Mar(8)).LastDay);
    }

    [Fact]
    public void Needle_dressing_extension_and_connector_of_a_port_are_one_clock_that_ends_when_the_needle_is_out()
    {
        var accessed = Port().Event(LineEventKind.PortAccessed, Mar(3), but: e => e with { Dressing = DressingKind.Film });

        Assert.Equal([CareItem.PortNeedle], accessed.AnswerAt(Mar(8)).Windows.Where(w => w.Line is not null && w.Item != CareItem.LumenFlush).Select(w => w.Item));
        Assert.DoesNotContain(accessed.Event(LineEventKind.PortDeaccessed, Mar(5)).AnswerAt(Mar(20)).Windows, w => w.Item is CareItem.PortNeedle or CareItem.Dressing or CareItem.Connector);
    }

    [Fact]
    public void An_idle_port_used_last_week_is_not_flushed_this_week() =>
        Assert.Equal(Mar(30), Port().Event(LineEventKind.Flushed, new LocalDate(2027, 2, 8))
            .Event(LineEventKind.PortAccessed, Mar(1), 9, but: e => e with { Dressing = DressingKind.Film }).Event(LineEventKind.PortDeaccessed, Mar(2), 9)
            .Window(CareItem.PortFlush, Mar(8)).LastDay);

    [Theory]
    [InlineData(SecurementKind.Sutured)]
    [InlineData(SecurementKind.SubcutaneousAnchor)]
    public void A_sutured_or_anchored_line_is_never_told_to_change_its_securement(SecurementKind kind) =>
        Assert.Empty(Picc(securement: kind).Dressing(Mar(3)).Windows(CareItem.Securement, Mar(20)));

    [Fact]
    public void A_healed_tunneled_line_without_a_dressing_is_not_months_late()
    {
        var healed = new Given().Line(LineKind.Tunneled, 1, but: l => l with { ExitSiteHealed = true }).Dressing(new LocalDate(2026, 11, 1), kind: DressingKind.None)
            .Event(LineEventKind.SiteChecked, Mar(4));

        Assert.Empty(healed.Windows(CareItem.Dressing, Mar(8)));
        Assert.Equal(Mar(11), healed.Window(CareItem.SiteCheck, Mar(8)).LastDay);
    }

    [Fact]
    public void Earliest_is_not_best_the_target_is_the_last_day()
    {
        var window = Picc().Dressing(Mar(3)).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(8), Mar(10)), (window.OpensOn, window.LastDay));
        Assert.Equal(Start(Mar(10)), window.Target);
    }

    [Fact]
    public void Chlorhexidine_stays_away_from_the_allergic_and_from_a_six_week_old()
    {
        var allergic = Picc().But(c => c with { Risks = RiskFactors.ChlorhexidineAllergy }).Care;
        var infant = Picc().But(c => c with { BornOn = Mar(8).PlusWeeks(-6) }).Care;

        Assert.All([allergic, infant], care => Assert.False(Materials.ChlorhexidineAllowed(care, PolicyBook.Default, Mar(8)).Allowed));
    }

    [Fact]
    public void The_outside_length_is_a_trend_with_a_lock_and_not_a_note()
    {
        var grown = new Given().Line(LineKind.Picc, 1, but: l => l with { OutsideLengthCm = 2 })
            .Event(LineEventKind.Measured, Mar(4), but: e => e with { OutsideLengthCm = 2.5m }).Event(LineEventKind.Measured, Mar(8), 5, but: e => e with { OutsideLengthCm = 4 });

        Assert.Contains(grown.AnswerAt(Mar(8)).Locks, locked => locked.Line == First);
        Assert.Contains(grown.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LengthGrew);
    }

    [Fact]
    public void Due_tomorrow_anyway_does_not_postpone_a_broken_seal()
    {
        var window = Picc().Dressing(Mar(2)).Seal(SealFinding.EdgeLifted, Mar(8), 8).Window(CareItem.Dressing, Mar(8), 9);

        Assert.Equal((WindowStanding.CutShort, Mar(8)), (window.Standing, window.LastDay));
    }
}
