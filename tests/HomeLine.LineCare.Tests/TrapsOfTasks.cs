using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Scope;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests;

/// <summary>What naive software gets wrong about whose task it is, who may do it and by what order. Common practice, no source, unless a test
/// says otherwise.</summary>
public sealed class TrapsOfTasks
{
    [Fact]
    public void What_the_clinic_did_and_reported_is_not_done_again_the_next_day() =>
        Assert.Equal(Mar(14), Picc().Dressing(new LocalDate(2027, 2, 28)).Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(7)),
            e => e with { Dressing = DressingKind.Film, Performer = PerformerKind.Outside, Certainty = Certainty.DischargePaper }).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Theory]
    [InlineData(LineEventKind.Missed)]
    [InlineData(LineEventKind.NotDone)]
    [InlineData(LineEventKind.Refused)]
    [InlineData(LineEventKind.PhoneCall)]
    public void Missed_refused_and_fine_on_the_phone_reset_nothing(LineEventKind kind)
    {
        var window = Picc().Dressing(Mar(1)).Event(kind, Mar(8), 9).Window(CareItem.Dressing, Mar(9));

        Assert.Equal(Mar(8), window.LastDay);
        Assert.True(window.IsLateAt(At(Mar(9), 6)));
    }

    [Fact]
    public void A_visit_that_did_half_leaves_the_other_half_due()
    {
        var given = Picc(2).Dressing(Mar(1)).Connector("A", Mar(1)).Connector("B", Mar(1)).Dressing(Mar(8)).Connector("A", Mar(8));

        Assert.Equal(Mar(15), given.Window(CareItem.Dressing, Mar(9)).LastDay);
        Assert.Equal(Mar(8), given.Window(CareItem.Connector, Mar(9), lumen: "B").LastDay);
    }

    [Fact]
    public void A_familys_nightly_sets_are_no_nurse_visits_and_fall_to_the_nurse_the_day_after_the_validation_ends()
    {
        var given = Picc(2).Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Caregiver).Validated(CareItem.Set, Mar(8))
            .Event(LineEventKind.SetChanged, Mar(8), 20, but: e => e with { LumensUsed = ["A"], Performer = PerformerKind.Caregiver, PerformerName = "spouse" });

        Assert.Equal(PerformerKind.Caregiver, given.Window(CareItem.Set, Mar(8), 21).Owner);
        Assert.Equal(PerformerKind.Nurse, given.Window(CareItem.Set, Mar(9), 6).Owner);
        Assert.Contains(given.AnswerAt(Mar(9)).Decisions, d => d.Code == DecisionCodes.ValidationLapsed);
    }

    [Fact]
    public void The_licence_counts_where_the_patient_is_and_one_that_ends_before_the_visit_does_not()
    {
        var nurse = new ScopedNurse("Tansy", "RN", [new("PICC")], [new("Marrow", Mar(9))]);

        Assert.Equal(ScopeCodes.LicenceMissing, Assert.Single(ScopeGate.WhyNot(nurse, new(["PICC"], GuardedCare.None, "Westling", Mar(8)), PolicyBook.Default)).Code);
        Assert.Equal(ScopeCodes.LicenceExpired, Assert.Single(ScopeGate.WhyNot(nurse, new(["PICC"], GuardedCare.None, "Marrow", Mar(10)), PolicyBook.Default)).Code);
    }

    [Fact]
    public void Recertification_is_a_window_of_five_days_and_not_a_reminder()
    {
        var window = Picc().But(care => care with { CareStartedOn = new LocalDate(2027, 1, 11) }).Window(CareItem.Recertification, Mar(1));

        Assert.Equal((Mar(7), Mar(11)), (window.OpensOn, window.LastDay));
        Assert.Equal(Start(Mar(12)), window.LateFrom);
    }

    [Fact]
    public void Nothing_can_be_planned_after_an_order_that_ends_mid_week() =>
        Assert.Equal(OrderCodes.PastTheEnd, EndingOrders.WhyNotOn(AnOrder(OrderKind.VisitFrequency) with { EndsOn = Mar(10) }, Mar(11)));

    [Fact]
    public void As_needed_visits_used_up_never_block_a_visit_for_safety()
    {
        var order = AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 1, AsNeededVisits = 3, AsNeededUsed = 3 };

        Assert.True(VisitAllowance.For(order, [Mar(8)], Mar(9), forSafety: true, PolicyBook.Default) is { Allowed: true, RequestOrder: true });
    }

    [Fact]
    public void A_two_day_chain_ordered_as_three_a_week_is_asked_about()
    {
        var given = Picc().Order(AnOrder(OrderKind.Interval, "O2") with { Item = CareItem.Dressing, EveryDays = 2 });
        var replies = BeforeOrdering.Replies(given.Care, new OrderDraft(AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 3 }), given.Policy, At(Mar(8), 9));

        Assert.Equal(OrderCodes.FrequencyShort, Assert.Single(replies).Code);
    }

    [Fact]
    public void A_dressing_is_not_changed_on_the_day_before_or_the_day_the_line_comes_out()
    {
        var removal = AnOrder(OrderKind.Removal) with { Line = First, Dates = [Mar(11)] };

        Assert.Empty(Picc().Dressing(Mar(3)).Order(removal).Windows(CareItem.Dressing, Mar(8)));
        Assert.Empty(Picc().Dressing(Mar(4)).Order(removal).Windows(CareItem.Dressing, Mar(8)));
        Assert.Equal(Mar(9), Picc().Dressing(Mar(2)).Order(removal).Window(CareItem.Dressing, Mar(8)).LastDay);
    }

    [Fact]
    public void So_many_a_week_is_no_interval_and_an_interval_is_not_so_many_a_week()
    {
        var weekly = AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 1 };

        Assert.All(VisitFrequency.Weeks(weekly, [Mar(7), Mar(20)], PolicyBook.Default), week => Assert.Equal(FrequencyStanding.Met, week.Standing));
        Assert.True(Picc().Dressing(Mar(7)).Order(weekly).Window(CareItem.Dressing, Mar(15)).IsLateAt(At(Mar(15), 6)));
        Assert.Equal(FrequencyStanding.Exceeded, Assert.Single(VisitFrequency.Weeks(weekly, [Mar(8), Mar(13)], PolicyBook.Default)).Standing);
    }
}
