using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

public sealed class OrdersAndThePlanOfCare
{
    private static Given Weekly(LocalDate lastDraw) => Picc().Order(AnOrder(OrderKind.Labs) with { EveryDays = 7 })
        .Event(LineEventKind.LabsDrawn, lastDraw, but: e => e with { Order = "O1" });

    [Fact]
    public void Weekly_labs_open_two_days_before_the_seventh_day()
    {
        var window = Weekly(Mar(4)).Window(CareItem.Labs, Mar(8));

        Assert.Equal((Mar(9), Mar(11), "O1"), (window.OpensOn, window.LastDay, window.Order));
        Assert.Equal(new Repeat(5, 7, ClockBasis.Date), window.Next);
    }

    [Fact]
    public void A_first_draw_is_due_within_the_interval_from_the_orders_start_and_unknown_after_it()
    {
        var fresh = Picc().Order(AnOrder(OrderKind.Labs) with { EveryDays = 7, StartsOn = Mar(5) });
        Assert.Equal(Mar(12), fresh.Window(CareItem.Labs, Mar(8)).LastDay);

        Assert.Equal(WindowStanding.DateUnknown, Picc().Order(AnOrder(OrderKind.Labs) with { EveryDays = 7 }).Window(CareItem.Labs, Mar(8)).Standing);
    }

    [Fact]
    public void Labs_on_Mondays_and_Thursdays_are_listed_for_two_weeks()
    {
        var windows = Picc().Order(AnOrder(OrderKind.Labs) with { Weekdays = [IsoDayOfWeek.Monday, IsoDayOfWeek.Thursday] })
            .Event(LineEventKind.LabsDrawn, Mar(4), but: e => e with { Order = "O1" }).Windows(CareItem.Labs, Mar(8));

        Assert.Equal([Mar(8), Mar(11), Mar(15), Mar(18), Mar(22)], windows.Select(w => w.LastDay));
        Assert.All(windows, w => Assert.Equal(WindowStanding.Ordered, w.Standing));
    }

    [Fact]
    public void Of_several_missed_days_only_the_latest_is_offered() =>
        Assert.Equal([Mar(4), Mar(8)], Picc().Order(AnOrder(OrderKind.Labs) with { Dates = [Mar(1), Mar(4), Mar(8)] })
            .Windows(CareItem.Labs, Mar(8)).Select(w => w.LastDay));

    [Fact]
    public void A_draw_without_an_order_named_does_not_answer_a_drug_level() =>
        Assert.Single(Picc().Order(AnOrder(OrderKind.DrugLevel) with { Dates = [Mar(9)] }).Event(LineEventKind.LabsDrawn, Mar(9), 8)
            .Windows(CareItem.Labs, Mar(9), 9));

    [Fact]
    public void A_daily_dose_falls_on_every_day_through_the_orders_end()
    {
        var given = Picc().Order(AnOrder(OrderKind.NurseDose) with { EveryDays = 1, EndsOn = Mar(11) })
            .Event(LineEventKind.DoseGiven, Mar(7), but: e => e with { Order = "O1" });

        Assert.Equal([Mar(8), Mar(9), Mar(10), Mar(11)], given.Windows(CareItem.OrderedService, Mar(8)).Select(w => w.LastDay));
        Assert.Equal([Mar(9), Mar(10), Mar(11)], given.Event(LineEventKind.DoseGiven, Mar(8), but: e => e with { Order = "O1" })
            .Windows(CareItem.OrderedService, Mar(8), 12).Select(w => w.LastDay));
    }

    [Fact]
    public void A_dose_that_was_not_recorded_is_asked_about_and_never_offered_twice()
    {
        var given = Picc().Order(AnOrder(OrderKind.NurseDose) with { EveryDays = 1 }).Event(LineEventKind.DoseGiven, Mar(5), but: e => e with { Order = "O1" });

        Assert.Equal(Mar(8), given.Windows(CareItem.OrderedService, Mar(8))[0].LastDay);
        Assert.Contains(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.DoseNotRecorded);
    }

    [Fact]
    public void Nothing_is_asked_for_after_an_order_has_ended()
    {
        var given = Picc().Order(AnOrder(OrderKind.Teaching) with { Dates = [Mar(9), Mar(10), Mar(12)], EndsOn = Mar(10) });

        Assert.Equal([Mar(9), Mar(10)], given.Windows(CareItem.OrderedService, Mar(8)).Select(w => w.LastDay));
        Assert.Empty(given.Windows(CareItem.OrderedService, Mar(11)));
    }

    [Fact]
    public void The_look_ahead_is_as_long_as_asked()
    {
        var given = Picc().Order(AnOrder(OrderKind.Hydration) with { Weekdays = [IsoDayOfWeek.Monday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Friday] });

        var windows = WhatIsDue.For(given.Care, given.Policy, At(Mar(8), 6), 6).Windows.Where(w => w.Item == CareItem.OrderedService);
        Assert.Equal([Mar(8), Mar(10), Mar(12)], windows.Where(w => w.LastDay >= Mar(8)).Select(w => w.LastDay));
    }

    [Fact]
    public void A_dressing_due_the_day_after_the_line_comes_out_is_not_changed()
    {
        var given = Picc().Dressing(Mar(5)).Connector("A", Mar(5)).Order(AnOrder(OrderKind.Removal) with { Line = First, Dates = [Mar(11)] });

        var answer = given.AnswerAt(Mar(8));
        Assert.DoesNotContain(answer.Windows, w => w.Item is CareItem.Dressing or CareItem.Connector or CareItem.Securement or CareItem.OutsideLength);
        Assert.Contains(answer.Waived, w => w.Window.Item == CareItem.Dressing && w.Reason.Contains("Thu 11 Mar", StringComparison.Ordinal));
        Assert.Contains(answer.Windows, w => w.Item == CareItem.OrderedService && w.LastDay == Mar(11));
    }

    [Fact]
    public void Once_the_line_is_out_neither_the_removal_nor_a_dose_through_it_is_due()
    {
        var given = Picc().Order(AnOrder(OrderKind.Removal, "O2") with { Line = First, Dates = [Mar(11)] })
            .Order(AnOrder(OrderKind.NurseDose) with { Line = First, EveryDays = 1, EndsOn = Mar(12) })
            .Event(LineEventKind.Removed, Mar(11), 11);

        Assert.NotEmpty(given.Windows(CareItem.OrderedService, Mar(11), 10));
        Assert.Empty(given.Windows(CareItem.OrderedService, Mar(11), 12));
    }

    [Fact]
    public void A_dressing_due_well_before_the_removal_is_changed() =>
        Assert.Equal(Mar(9), Picc().Dressing(Mar(2)).Order(AnOrder(OrderKind.Removal) with { Dates = [Mar(11)] }).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_broken_seal_is_not_waived_for_a_removal_tomorrow() =>
        Assert.Equal(WindowStanding.CutShort, Picc().Dressing(Mar(5)).Order(AnOrder(OrderKind.Removal) with { Dates = [Mar(11)] })
            .Seal(SealFinding.Off, Mar(10), 8).Window(CareItem.Dressing, Mar(10), 9).Standing);

    [Fact]
    public void Care_started_8_February_is_recertified_by_8_April_and_then_every_60_days()
    {
        var given = Picc();
        Assert.Equal((new LocalDate(2027, 4, 4), new LocalDate(2027, 4, 8)), Recertification(given, Mar(8)));

        var done = given.Event(LineEventKind.Recertified, new LocalDate(2027, 4, 6), but: e => e with { Line = null });
        Assert.Equal((new LocalDate(2027, 6, 3), new LocalDate(2027, 6, 7)), Recertification(done, new LocalDate(2027, 4, 7)));

        static (LocalDate, LocalDate) Recertification(Given given, LocalDate now)
        {
            var window = given.Window(CareItem.Recertification, now);
            return (window.OpensOn, window.LastDay);
        }
    }

    [Fact]
    public void An_assessment_before_day_56_does_not_count_as_recertification() =>
        Assert.Equal(new LocalDate(2027, 4, 8), Picc().Event(LineEventKind.Recertified, new LocalDate(2027, 4, 3))
            .Window(CareItem.Recertification, new LocalDate(2027, 4, 4)).LastDay);

    [Fact]
    public void A_recertification_that_was_missed_is_late()
    {
        var window = Picc().Window(CareItem.Recertification, new LocalDate(2027, 4, 9));

        Assert.True(window.IsLateAt(At(new LocalDate(2027, 4, 9), 6)));
    }

    [Fact]
    public void A_validation_that_runs_out_is_shown_before_it_bites_and_asked_about_after()
    {
        var given = Picc().Validated(CareItem.Dressing, Mar(20));

        Assert.Equal((Mar(6), Mar(20)), (given.Window(CareItem.CaregiverValidation, Mar(8)).OpensOn, given.Window(CareItem.CaregiverValidation, Mar(8)).LastDay));
        Assert.Empty(given.Windows(CareItem.CaregiverValidation, Mar(21)));
        Assert.Contains(given.AnswerAt(Mar(21)).Decisions, d => d.Code == DecisionCodes.ValidationLapsed);
        Assert.DoesNotContain(given.Validated(CareItem.Dressing, Mar(31)).AnswerAt(Mar(21)).Decisions, d => d.Code == DecisionCodes.ValidationLapsed);
    }

    [Fact]
    public void A_clinic_that_is_expected_owns_the_dressing_until_its_report_is_overdue()
    {
        var given = Picc().Dressing(Mar(4)).But(c => c with
        {
            Outside = [new OutsideCare(Patient, First, Mar(10), At(Mar(11), 18), "The clinic", [CareItem.Dressing])],
        });

        Assert.Equal(PerformerKind.Outside, given.Window(CareItem.Dressing, Mar(8)).Owner);
        Assert.Equal(PerformerKind.Nurse, given.Window(CareItem.Dressing, Mar(11), 18).Owner);
        Assert.Contains(given.AnswerAt(Mar(11), 18).Decisions, d => d.Code == DecisionCodes.OutsideCareNotReported);

        var reported = given.Event(LineEventKind.DressingChanged, Mar(10), but: e => e with { Performer = PerformerKind.Outside, Dressing = DressingKind.Film });
        Assert.Equal((PerformerKind.Nurse, Mar(17)), (reported.Window(CareItem.Dressing, Mar(10), 12).Owner, reported.Window(CareItem.Dressing, Mar(10), 12).LastDay));
    }

    [Fact]
    public void A_hold_stops_planning_and_not_the_clocks()
    {
        var given = Picc().Dressing(Mar(1)).But(c => c with { Holds = [new Hold(Patient, Mar(6), null, "Hospital")] });

        var answer = given.AnswerAt(Mar(9));
        Assert.Equal("Hospital", answer.OnHold!.Reason);
        Assert.True(answer.Windows.Single(w => w.Item == CareItem.Dressing).IsLateAt(answer.AsOf));
        Assert.Null(given.AnswerAt(Mar(5)).OnHold);
    }
}
