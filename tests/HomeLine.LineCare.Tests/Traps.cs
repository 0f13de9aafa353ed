using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests;

/// <summary>What naive software gets wrong about clocks. Common practice, no source, unless a test says otherwise.</summary>
public sealed class Traps
{
    [Fact]
    public void Counting_starts_from_the_care_never_from_the_note() =>
        Assert.Equal(Mar(10), Picc().Event(LineEventKind.DressingChanged, Mar(3), 9, 0, e => e with { Dressing = DressingKind.Film, RecordedAt = At(Mar(6), 21) })
            .Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_correction_upstream_moves_everything_downstream_because_no_due_date_is_stored()
    {
        var wrong = Picc().Dressing(Mar(5));
        var corrected = wrong.Event(LineEventKind.DressingChanged, Mar(3), but: e => e with { Dressing = DressingKind.Film, Voids = new EventId("E1") });

        Assert.Equal(Mar(12), wrong.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.All(corrected.AnswerAt(Mar(8)).Windows.Where(w => w.Item is CareItem.Dressing or CareItem.Securement or CareItem.OutsideLength), w => Assert.Equal(Mar(10), w.LastDay));
    }

    [Fact]
    public void The_day_of_change_is_day_zero() =>
        Assert.Equal(Mar(10), Picc().Dressing(Mar(3)).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_film_put_on_at_three_is_not_late_at_one_past_three_on_the_seventh_day()
    {
        var window = Picc().Dressing(Mar(3), 15).Window(CareItem.Dressing, Mar(10));

        Assert.False(window.IsLateAt(At(Mar(10), 15, 1)));
        Assert.True(window.IsLateAt(Start(Mar(11))));
    }

    [Fact]
    public void Elapsed_hours_do_not_stretch_when_the_clocks_change_and_a_nurses_own_zone_does_not_matter()
    {
        var given = Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(12), 14);
        Assert.Equal(Duration.FromHours(96), given.Window(CareItem.Set, Mar(13)).LateFrom - At(Mar(12), 14));

        var phone = DateTimeZoneProviders.Tzdb["America/Chicago"];
        var midnight = Mar(3).At(new LocalTime(23, 30)).InZoneLeniently(phone).ToInstant();
        Assert.Equal(Mar(11), Picc().Event(LineEventKind.DressingChanged, CareMoment.Exactly(midnight, Zone), e => e with { Dressing = DressingKind.Film })
            .Window(CareItem.Dressing, Mar(8)).LastDay);
    }

    [Fact]
    public void A_Monday_rescue_is_followed_by_the_next_Monday_and_not_by_Wednesdays_habit()
    {
        var window = Picc().Dressing(Mar(3)).Seal(SealFinding.EdgeLifted, Mar(8), 8).Dressing(Mar(8), 11).Window(CareItem.Dressing, Mar(9));

        Assert.Equal((Mar(13), Mar(15)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void A_connector_at_eighty_hours_is_too_early() =>
        Assert.True(Picc().Connector("A", Mar(4), 22).Window(CareItem.Connector, Mar(8)).Opens > At(Mar(8), 6));

    [Fact]
    public void A_set_of_24_hours_is_not_two_dates() =>
        Assert.Equal(At(Mar(9), 8), Picc().Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(8), 8)
            .Window(CareItem.Set, Mar(8), 9).LateFrom);

    [Fact]
    public void Equal_floor_and_ceiling_leave_a_last_day_to_do_it_on()
    {
        var window = Picc().Dressing(Mar(3)).AgencyRule("dressing.film.min", 7, "days", new LocalDate(2026, 1, 1)).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(10), Mar(10)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void A_floor_set_above_the_ceiling_by_an_order_still_leaves_the_last_day() =>
        Assert.Equal((Mar(6), Mar(6)), Picc().Dressing(Mar(3)).Order(AnOrder(OrderKind.Interval) with { Item = CareItem.Dressing, EveryDays = 3 })
            .Window(CareItem.Dressing, Mar(4)) is var w ? (w.OpensOn, w.LastDay) : default);

    [Fact]
    public void A_lumen_never_used_is_not_forgotten() =>
        Assert.Equal(["A", "B"], Picc(2).Connector("A", Mar(4)).AnswerAt(Mar(8)).Windows.Where(w => w.Item == CareItem.Connector).Select(w => w.Lumen).Order());

    [Fact]
    public void A_second_line_has_its_own_windows()
    {
        var given = Picc().Line(LineKind.Midline, 1, "P1-2").Dressing(Mar(6)).Dressing(Mar(5), line: "P1-2");

        Assert.Equal(Mar(13), given.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.Equal(Mar(12), given.Window(CareItem.Dressing, Mar(8), line: "P1-2").LastDay);
    }

    [Fact]
    public void A_midline_counts_no_central_days()
    {
        Assert.False(LineKind.Midline.IsCentral());
        Assert.True(LineKind.Port.IsCentral());
    }

    [Fact]
    public void An_unknown_date_is_neither_today_nor_long_ago()
    {
        var window = Picc().Event(LineEventKind.DressingChanged, null, e => e with { Dressing = DressingKind.Film, RecordedAt = At(Mar(8), 9) })
            .Window(CareItem.Dressing, Mar(8), 10);

        Assert.Equal(WindowStanding.DateUnknown, window.Standing);
        Assert.Null(window.Because.AnchorDate);
        Assert.Equal(Mar(8), window.LastDay);
    }

    [Fact]
    public void After_a_hospital_stay_no_item_says_so_many_days_left()
    {
        var given = Picc(2).Dressing(Mar(5)).Connector("A", Mar(5)).Connector("B", Mar(5))
            .Event(LineEventKind.AdmittedToHospital, Mar(6), but: e => e with { Line = null }).Event(LineEventKind.ReturnedHome, Mar(9), but: e => e with { Line = null });

        Assert.All(given.AnswerAt(Mar(10)).Windows.Where(w => w.Line is not null), w => Assert.Equal(WindowStanding.DateUnknown, w.Standing));
    }

    [Fact]
    public void Retaped_and_fine_now_leaves_the_seal_broken() =>
        Assert.Equal(WindowStanding.CutShort, Picc().Dressing(Mar(7)).Seal(SealFinding.EdgeLifted, Mar(9), 8).Event(LineEventKind.DressingReinforced, Mar(9), 9)
            .Event(LineEventKind.PhoneCall, Mar(9), 10).Window(CareItem.Dressing, Mar(9), 11).Standing);

    [Fact]
    public void Validation_is_per_item_and_not_per_person()
    {
        var given = Picc(2).Dressing(Mar(4)).Validated(CareItem.LumenFlush, Mar(31)).Connector("A", Mar(4)).Connector("B", Mar(4));

        Assert.All(given.AnswerAt(Mar(8)).Windows.Where(w => w.Item is CareItem.Dressing or CareItem.Connector), w => Assert.Equal(PerformerKind.Nurse, w.Owner));
        Assert.All(given.AnswerAt(Mar(8)).Windows.Where(w => w.Item == CareItem.LumenFlush), w => Assert.Equal(PerformerKind.Caregiver, w.Owner));
    }

    [Fact]
    public void Validation_for_one_line_is_not_validation_for_another()
    {
        var given = Picc().Line(LineKind.Midline, 1, "P1-2").Dressing(Mar(4)).Dressing(Mar(4), line: "P1-2")
            .But(c => c with { Caregivers = [new CaregiverValidation(Patient, "sister", CareItem.Dressing, Mar(31), First)] });

        Assert.Equal(PerformerKind.Caregiver, given.Window(CareItem.Dressing, Mar(8)).Owner);
        Assert.Equal(PerformerKind.Nurse, given.Window(CareItem.Dressing, Mar(8), line: "P1-2").Owner);
    }

    [Fact]
    public void Securement_and_length_stay_with_whoever_does_the_dressing() =>
        Assert.All(
            Picc().Dressing(Mar(4)).Validated(CareItem.Dressing, Mar(31)).AnswerAt(Mar(8)).Windows.Where(w => w.Item is CareItem.Securement or CareItem.OutsideLength),
            w => Assert.Equal(PerformerKind.Caregiver, w.Owner));

    [Fact]
    public void Removing_and_naming_nothing_else_leaves_no_clock_running() =>
        Assert.DoesNotContain(Port().Event(LineEventKind.PortAccessed, Mar(2)).Event(LineEventKind.Removed, Mar(4)).AnswerAt(Mar(8)).Windows,
            w => w.Item is CareItem.PortNeedle or CareItem.PortFlush);

    [Fact]
    public void Last_months_care_stays_as_it_was_under_a_policy_made_today()
    {
        var given = Picc().Dressing(new LocalDate(2027, 2, 1)).Dressing(new LocalDate(2027, 2, 8)).AgencyRule("dressing.film.max", 5, "days", Mar(8));

        Assert.Equal(new LocalDate(2027, 2, 8), given.Window(CareItem.Dressing, new LocalDate(2027, 2, 5)).LastDay);
        Assert.Equal(new LocalDate(2027, 2, 15), given.Window(CareItem.Dressing, new LocalDate(2027, 2, 20)).LastDay);
    }

    [Fact]
    public void An_unused_port_needle_and_its_dressing_never_drift_apart()
    {
        var given = Port().Event(LineEventKind.PortAccessed, Mar(2)).Dressing(Mar(5));

        Assert.Equal(Mar(9), given.Window(CareItem.PortNeedle, Mar(8)).LastDay);
        Assert.Empty(given.Windows(CareItem.Dressing, Mar(8)));
    }
}
