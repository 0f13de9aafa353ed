using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

/// <summary>The assessment after a stay (42 CFR 484.55(d)(2), from memory), and what is watched without a clock.</summary>
public sealed class ComingHomeAndWatching
{
    private static readonly Func<LineEvent, LineEvent> OfThePatient = entry => entry with { Line = null };

    private static Given HomeAgain(int days = 4) => Picc()
        .Event(LineEventKind.AdmittedToHospital, Mar(6), 10, but: OfThePatient).Event(LineEventKind.ReturnedHome, Mar(6 + days), 14, but: OfThePatient);

    [Fact]
    public void Home_after_a_stay_the_assessment_comes_within_48_hours()
    {
        var window = HomeAgain().Window(CareItem.Recertification, Mar(10), 15);

        Assert.Equal((At(Mar(10), 14), At(Mar(12), 14)), (window.Opens, window.LateFrom));
        Assert.Equal("resumption.max", window.Because.RuleId);
        Assert.Contains("The window without the stay", window.Because.Overrode.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void Forty_eight_hours_are_elapsed_hours_across_the_change_of_the_clocks()
    {
        var window = HomeAgain(7).Window(CareItem.Recertification, Mar(13), 15);

        Assert.Equal(At(Mar(15), 15), window.LateFrom);
    }

    [Fact]
    public void Once_assessed_the_plan_of_care_runs_as_before()
    {
        var window = HomeAgain().Event(LineEventKind.Recertified, Mar(11), but: OfThePatient).Window(CareItem.Recertification, Mar(12));

        Assert.Equal(new LocalDate(2027, 4, 8), window.LastDay);
    }

    [Fact]
    public void A_stay_of_less_than_a_day_asks_for_none()
    {
        var shortStay = Picc().Event(LineEventKind.AdmittedToHospital, Mar(6), 10, but: OfThePatient).Event(LineEventKind.ReturnedHome, Mar(7), 9, but: OfThePatient);

        Assert.Equal("recertification.max", shortStay.Window(CareItem.Recertification, Mar(7), 12).Because.RuleId);
    }

    [Fact]
    public void A_recertification_that_is_due_sooner_stays_where_it_is()
    {
        var window = HomeAgain().But(c => c with { CareStartedOn = new LocalDate(2027, 1, 11) }).Window(CareItem.Recertification, Mar(10), 15);

        Assert.Equal(("recertification.max", Mar(11)), (window.Because.RuleId, window.LastDay));
    }

    [Fact]
    public void The_care_started_date_edited_moves_the_assessment() =>
        Assert.Equal(Mar(11), Picc().But(c => c with { CareStartedOn = new LocalDate(2027, 1, 11) }).Window(CareItem.Recertification, Mar(8)).LastDay);

    [Fact]
    public void An_arm_three_centimetres_wider_than_at_first_is_asked_about()
    {
        static Given Arm(decimal now) => Picc().Event(LineEventKind.Measured, Mar(1), but: e => e with { ArmGirthCm = 27 })
            .Event(LineEventKind.Measured, Mar(5), but: e => e with { ArmGirthCm = now });

        Assert.Contains(Arm(30).AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.GirthRose);
        Assert.DoesNotContain(Arm(29.9m).AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.GirthRose);
    }

    [Fact]
    public void A_midline_four_weeks_old_is_asked_about_and_never_changed_by_a_clock()
    {
        var given = new Given().Line(LineKind.Midline, 1, but: l => l with { InsertedOn = new LocalDate(2027, 2, 8) });

        Assert.DoesNotContain(given.AnswerAt(Mar(7)).Decisions, d => d.Code == DecisionCodes.MidlineDwell);
        Assert.Contains(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.MidlineDwell);
        Assert.DoesNotContain(given.AnswerAt(Mar(8)).Windows, w => w.Item == CareItem.OrderedService);
    }

    [Fact]
    public void A_level_without_dose_times_is_asked_about()
    {
        var level = AnOrder(OrderKind.DrugLevel) with { Dates = [Mar(9)] };

        Assert.Contains(Picc().Order(level).AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LevelWithoutDoseTimes);
        Assert.DoesNotContain(Picc().Order(level with { DoseTimes = [new LocalTime(10, 0)] }).AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LevelWithoutDoseTimes);
    }

    [Fact]
    public void A_port_left_accessed_with_nothing_running_is_flushed_like_an_idle_lumen()
    {
        var accessed = Port().Event(LineEventKind.PortAccessed, Mar(3), but: e => e with { Dressing = DressingKind.Film });

        Assert.Equal(Mar(10), accessed.Window(CareItem.LumenFlush, Mar(8)).LastDay);
        Assert.Empty(accessed.Infusion(InfusionKind.Continuous, PerformerKind.Caregiver).Windows(CareItem.LumenFlush, Mar(8)));
        Assert.Empty(accessed.Event(LineEventKind.PortDeaccessed, Mar(5)).Windows(CareItem.LumenFlush, Mar(8)));
    }

    [Fact]
    public void An_admission_without_a_date_pauses_planning_from_the_day_it_was_entered()
    {
        var given = Picc().Event(LineEventKind.AdmittedToHospital, null, e => e with { Line = null, RecordedAt = At(Mar(7), 9) });

        Assert.Equal(Mar(7), given.AnswerAt(Mar(8)).OnHold!.From);
    }
}
