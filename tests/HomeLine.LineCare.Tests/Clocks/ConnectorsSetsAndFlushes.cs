using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

public sealed class ConnectorsSetsAndFlushes
{
    private static Given Inotrope => Picc(2).Infusion(InfusionKind.Continuous, PerformerKind.Nurse, never: true)
        .Connector("A", Mar(4), 14).Event(LineEventKind.SetChanged, Mar(4), 14, 0, e => e with { LumensUsed = ["A"] });

    [Fact]
    public void A_continuous_set_runs_72_to_96_elapsed_hours()
    {
        var set = Inotrope.Window(CareItem.Set, Mar(8));

        Assert.Equal((At(Mar(7), 14), At(Mar(8), 14)), (set.Opens, set.LateFrom));
        Assert.Equal(new Repeat(72, 96, ClockBasis.Hour), set.Next);
    }

    [Fact]
    public void The_connector_of_a_continuous_infusion_goes_with_its_set_and_the_other_lumen_does_not()
    {
        var given = Inotrope.Connector("B", Mar(4), 14);

        Assert.Equal(At(Mar(8), 14), given.Window(CareItem.Connector, Mar(8), lumen: "A").LateFrom);
        Assert.Equal(Start(Mar(12)), given.Window(CareItem.Connector, Mar(8), lumen: "B").LateFrom);
    }

    [Fact]
    public void The_connector_of_a_nutrition_lumen_does_not_follow_the_daily_set() =>
        Assert.Equal(Mar(11), Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Connector("A", Mar(4))
            .Window(CareItem.Connector, Mar(8), lumen: "A").LastDay);

    [Fact]
    public void Ninety_six_hours_are_not_four_dates()
    {
        var window = Picc().Connector("A", Mar(4), 22).Window(CareItem.Connector, Mar(8));

        Assert.True(window.Opens > At(Mar(8), 8));
        Assert.Equal(new Repeat(5, 7, ClockBasis.Date), window.Next);
    }

    [Fact]
    public void Without_a_time_the_floor_counts_from_the_end_of_the_day()
    {
        var window = Picc().Event(LineEventKind.ConnectorChanged, CareMoment.SometimeOn(Mar(4)), e => e with { ConnectorsChanged = ["A"] })
            .Window(CareItem.Connector, Mar(8));

        Assert.Equal(Start(Mar(9)), window.Opens);
        Assert.Equal(Mar(11), window.LastDay);
    }

    [Fact]
    public void A_set_whose_time_is_not_recorded_counts_from_the_start_of_its_day()
    {
        var window = Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse)
            .Event(LineEventKind.SetChanged, CareMoment.SometimeOn(Mar(4)), e => e with { LumensUsed = ["A"] }).Window(CareItem.Set, Mar(6));

        Assert.Equal(Start(Mar(8)), window.LateFrom);
        Assert.Contains("time not recorded", window.Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cracked_connector_is_due_the_same_day_and_closed_by_its_change()
    {
        var given = Picc().Connector("A", Mar(7)).Event(LineEventKind.ConnectorCompromised, Mar(9), 9, 0, e => e with { LumensUsed = ["A"] });

        var window = given.Window(CareItem.Connector, Mar(9), 10);
        Assert.Equal((WindowStanding.CutShort, At(Mar(9), 13), Start(Mar(10))), (window.Standing, window.Target, window.LateFrom));
        Assert.Equal(WindowStanding.Running, given.Connector("A", Mar(9), 12).Window(CareItem.Connector, Mar(9), 13).Standing);
    }

    [Fact]
    public void An_occluded_lumen_has_no_connector_and_no_flush_until_it_is_cleared()
    {
        var given = Picc(2).Connector("A", Mar(4)).Connector("B", Mar(4))
            .Event(LineEventKind.LumenOccluded, Mar(5), but: e => e with { LumensUsed = ["B"] });

        Assert.DoesNotContain(given.AnswerAt(Mar(8)).Windows, w => w.Lumen == "B");
        Assert.Equal("B", Assert.Single(given.AnswerAt(Mar(8)).Locks).Lumen);
        Assert.Contains(given.Event(LineEventKind.LumenCleared, Mar(6), but: e => e with { LumensUsed = ["B"] }).AnswerAt(Mar(8)).Windows, w => w.Lumen == "B");
    }

    [Fact]
    public void A_lumen_with_an_infusion_has_no_idle_flush() =>
        Assert.Equal("B", Assert.Single(Picc(2).Infusion(InfusionKind.Intermittent, PerformerKind.Caregiver).Windows(CareItem.LumenFlush, Mar(8))).Lumen);

    [Theory]
    [InlineData(InfusionKind.ParenteralNutrition, 24)]
    [InlineData(InfusionKind.Lipid, 12)]
    [InlineData(InfusionKind.Blood, 4)]
    [InlineData(InfusionKind.Intermittent, 24)]
    public void A_set_that_belongs_to_a_container_has_its_own_hours(InfusionKind kind, int hours) =>
        Assert.Equal(At(Mar(8), 20) + Duration.FromHours(hours), Picc().Infusion(kind, PerformerKind.Caregiver).Validated(CareItem.Set, Mar(31))
            .Event(LineEventKind.SetChanged, Mar(8), 20, 0, e => e with { Performer = PerformerKind.Caregiver, PerformerName = "spouse" })
            .Window(CareItem.Set, Mar(8), 21).LateFrom);

    [Fact]
    public void Daily_sets_of_a_validated_caregiver_ask_for_no_nurse() =>
        Assert.DoesNotContain(
            Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Validated(CareItem.Set, Mar(31)).AnswerAt(Mar(8)).Windows,
            w => w.Item == CareItem.Set);

    [Fact]
    public void A_nutrition_set_falls_to_the_nurse_on_the_day_after_the_validation_lapsed()
    {
        var given = Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Validated(CareItem.Set, Mar(5));

        Assert.Empty(given.Windows(CareItem.Set, Mar(5)));
        Assert.Equal(PerformerKind.Nurse, given.Window(CareItem.Set, Mar(6)).Owner);
        Assert.Contains(given.AnswerAt(Mar(6)).Decisions, d => d.Code == DecisionCodes.CaregiverNotValidated);
    }

    [Fact]
    public void A_caregiver_keeps_a_task_only_when_the_validation_lasts_through_the_window()
    {
        Assert.Equal(PerformerKind.Caregiver, Picc().Dressing(Mar(4)).Validated(CareItem.Dressing, Mar(11)).Window(CareItem.Dressing, Mar(8)).Owner);
        Assert.Equal(PerformerKind.Nurse, Picc().Dressing(Mar(4)).Validated(CareItem.Dressing, Mar(10)).Window(CareItem.Dressing, Mar(8)).Owner);
        Assert.Equal(PerformerKind.Nurse, Picc().Dressing(Mar(4)).Validated(CareItem.LumenFlush, Mar(31)).Window(CareItem.Dressing, Mar(8)).Owner);
    }

    [Fact]
    public void Using_an_idle_port_resets_its_flush()
    {
        var given = Port().Event(LineEventKind.Flushed, new LocalDate(2027, 2, 11)).Event(LineEventKind.BloodDrawn, Mar(2));

        Assert.Equal(Mar(30), given.Window(CareItem.PortFlush, Mar(8)).LastDay);
        Assert.Equal(Mar(23), given.Window(CareItem.PortFlush, Mar(8)).OpensOn);
    }

    [Fact]
    public void The_needle_clock_does_not_run_on_a_port_without_needle()
    {
        var given = Port().Event(LineEventKind.PortAccessed, Mar(1)).Event(LineEventKind.PortDeaccessed, Mar(1), 14);

        Assert.Empty(given.Windows(CareItem.PortNeedle, Mar(8)));
    }

    [Fact]
    public void A_dialysis_catheter_is_recorded_and_has_nothing_due()
    {
        var answer = new Given().Line(LineKind.DialysisCatheter, 2).AnswerAt(Mar(8));

        Assert.DoesNotContain(answer.Windows, w => w.Line is not null);
        Assert.Contains("not for our use", Assert.Single(answer.Locks).Reason, StringComparison.Ordinal);
    }
}
