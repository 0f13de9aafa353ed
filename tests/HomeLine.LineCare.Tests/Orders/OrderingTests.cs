using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Orders;

public sealed class OrderingTests
{
    private static readonly CareOrder Weekly = AnOrder(OrderKind.VisitFrequency) with { VisitsPerWeek = 1, AsNeededVisits = 3, AsNeededUsed = 1 };

    private static void Says(Given given, OrderDraft draft, string code, ReplyWeight weight) =>
        Assert.Equal(weight, Assert.Single(BeforeOrdering.Replies(given.Care, draft, given.Policy, At(Mar(8), 12)), reply => reply.Code == code).Weight);

    private static void Accepts(Given given, OrderDraft draft) =>
        Assert.Empty(BeforeOrdering.Replies(given.Care, draft, given.Policy, At(Mar(8), 12)));

    [Fact]
    public void A_new_visit_frequency_takes_the_place_of_the_one_before_and_says_so()
    {
        CareOrder twice = Weekly with { Id = "O2", VisitsPerWeek = 2, StartsOn = Mar(10) };
        Says(Picc().Order(Weekly), new OrderDraft(twice, Signs: "lifting"), OrderCodes.FrequencyReplaced, ReplyWeight.Tell);
        Assert.Contains(
            "as-needed visits end with it",
            Assert.Single(BeforeOrdering.Replies(Picc().Order(Weekly).Care, new OrderDraft(twice with { AsNeededVisits = null }), Picc().Policy, At(Mar(9), 12)), r => r.Code == OrderCodes.FrequencyReplaced).Sentence,
            StringComparison.Ordinal);
        Assert.Empty(BeforeOrdering.Replaced(Picc().Order(Weekly with { EndsOn = Mar(9) }).Care, twice));
        Assert.Empty(BeforeOrdering.Replaced(Picc().Order(Weekly).Care, twice with { Kind = OrderKind.Labs }));
    }

    /// <summary>42 CFR 409.43(b), looked up: an as-needed order names the signs that would prompt a visit and a limit on the number of visits.</summary>
    [Fact]
    public void As_needed_visits_need_signs_and_a_limit()
    {
        Accepts(Picc(), new OrderDraft(Weekly, AsNeeded: true, Signs: "dressing lifting, wet or soiled"));
        Says(Picc(), new OrderDraft(Weekly with { AsNeededVisits = null }, AsNeeded: true, Signs: "dressing lifting"), OrderCodes.AsNeededWithoutLimit, ReplyWeight.Refuse);
        Says(Picc(), new OrderDraft(Weekly), OrderCodes.AsNeededWithoutSigns, ReplyWeight.Refuse);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(366)]
    public void An_interval_below_one_day_or_over_a_year_is_refused(int days) =>
        Says(Picc(), new OrderDraft(AnOrder(OrderKind.Interval) with { Item = CareItem.Dressing, EveryDays = days }), DecisionCodes.OrderIntervalOutOfRange, ReplyWeight.Refuse);

    [Fact]
    public void An_order_looser_than_policy_is_told_to_wait_for_confirmation() =>
        Says(Picc().Dressing(Mar(3)), new OrderDraft(AnOrder(OrderKind.Interval) with { Item = CareItem.Dressing, EveryDays = 14 }), DecisionCodes.LooserOrder, ReplyWeight.Tell);

    [Fact]
    public void A_level_without_dose_times_is_asked_about() =>
        Says(Picc(), new OrderDraft(AnOrder(OrderKind.DrugLevel)), DecisionCodes.LevelWithoutDoseTimes, ReplyWeight.Ask);

    [Fact]
    public void Two_day_care_ordered_as_three_visits_a_week_asks_which_one_stands()
    {
        var everyTwo = AnOrder(OrderKind.Interval, "O2") with { Item = CareItem.Dressing, EveryDays = 2 };

        Says(Picc().Order(everyTwo), new OrderDraft(Weekly with { VisitsPerWeek = 3 }, Signs: "gauze soaked"), OrderCodes.FrequencyShort, ReplyWeight.Ask);
        Accepts(Picc().Order(everyTwo), new OrderDraft(Weekly with { VisitsPerWeek = 4 }, Signs: "gauze soaked"));
    }

    [Fact]
    public void The_last_day_is_not_before_the_first() =>
        Says(Picc(), new OrderDraft(AnOrder(OrderKind.Labs) with { StartsOn = Mar(8), EndsOn = Mar(7) }), OrderCodes.EndsBeforeStart, ReplyWeight.Refuse);

    [Fact]
    public void A_spoken_order_is_read_back_and_one_taken_during_the_visit_is_marked()
    {
        var verbal = new VerbalOrder("O1", At(Mar(8), 10, 5), "Juniper Brasslock", ReadBack: true);
        var labs = AnOrder(OrderKind.Labs);

        Accepts(Picc(), new OrderDraft(labs, Verbal: verbal));
        Says(Picc(), new OrderDraft(labs, Verbal: verbal with { ReadBack = false }), OrderCodes.NotReadBack, ReplyWeight.Refuse);
        Says(Picc(), new OrderDraft(labs, Verbal: verbal with { TakenBy = " " }), OrderCodes.NotReadBack, ReplyWeight.Refuse);
        Says(Picc(), new OrderDraft(labs, Verbal: verbal, VisitStartedAt: At(Mar(8), 10, 5)), OrderCodes.AfterVisitStart, ReplyWeight.Tell);
        Accepts(Picc(), new OrderDraft(labs, Verbal: verbal, VisitStartedAt: At(Mar(8), 10, 6)));
    }

    [Fact]
    public void Spoken_orders_that_wait_for_a_signature_age_and_become_overdue()
    {
        VerbalOrder[] orders =
        [
            new("O1", At(Mar(1), 9), "N1", true),
            new("O2", At(new LocalDate(2027, 2, 20), 9), "N1", true),
            new("O3", At(new LocalDate(2027, 2, 1), 9), "N1", true, SignedOn: new LocalDate(2027, 2, 3)),
        ];
        var waiting = UnsignedOrder.Waiting(orders, PolicyBook.Default, Zone, Mar(8));

        Assert.Equal([("O2", 16, true), ("O1", 7, false)], waiting.Select(w => (w.Order.Order, w.AgeInDays, w.Overdue)));
        Assert.Equal(Mar(15), waiting[1].DueBy);
    }

    [Fact]
    public void Orders_that_end_are_listed_fourteen_seven_three_and_one_days_ahead()
    {
        CareOrder Ending(string id, int days) => AnOrder(OrderKind.VisitFrequency, id) with { Patient = new PatientId(id), EndsOn = Mar(8).PlusDays(days) };
        var listed = EndingOrders.List([Ending("A", 15), Ending("B", 14), Ending("C", 7), Ending("D", 3), Ending("E", 1), Ending("F", 0), Ending("G", -1)], Mar(8), PolicyBook.Default);

        Assert.Equal([("F", 0, 1), ("E", 1, 1), ("D", 3, 3), ("C", 7, 7), ("B", 14, 14)], listed.Select(e => (e.Order.Id, e.DaysLeft, e.Notice)));
    }

    [Fact]
    public void An_order_that_was_renewed_is_not_listed() =>
        Assert.Empty(EndingOrders.List(
            [AnOrder(OrderKind.VisitFrequency) with { EndsOn = Mar(10) }, AnOrder(OrderKind.VisitFrequency, "O2") with { StartsOn = Mar(11), EndsOn = new LocalDate(2027, 5, 8) }],
            Mar(8), PolicyBook.Default));

    [Fact]
    public void Nothing_is_planned_past_an_orders_end_or_before_its_start()
    {
        var order = AnOrder(OrderKind.VisitFrequency) with { EndsOn = Mar(10) };

        Assert.Null(EndingOrders.WhyNotOn(order, Mar(10)));
        Assert.Equal(OrderCodes.PastTheEnd, EndingOrders.WhyNotOn(order, Mar(11)));
        Assert.Equal(OrderCodes.NoOrder, EndingOrders.WhyNotOn(order, new LocalDate(2027, 2, 7)));
    }

    [Fact]
    public void A_week_whose_visits_are_used_takes_an_as_needed_visit()
    {
        Assert.Equal("", VisitAllowance.For(Weekly, [Mar(6)], Mar(8), false, PolicyBook.Default).Code);
        var second = VisitAllowance.For(Weekly, [Mar(8)], Mar(13), false, PolicyBook.Default);
        Assert.True(second is { Allowed: true, UsesAsNeeded: true, RequestOrder: false, Code: OrderCodes.FrequencyUsed });
    }

    [Fact]
    public void The_last_as_needed_visit_gone_stops_a_routine_visit_and_never_one_for_safety()
    {
        var used = Weekly with { AsNeededUsed = 3 };

        Assert.True(VisitAllowance.For(used, [Mar(8)], Mar(10), false, PolicyBook.Default) is { Allowed: false, RequestOrder: true, Code: OrderCodes.AsNeededUsedUp });
        Assert.True(VisitAllowance.For(used, [Mar(8)], Mar(10), true, PolicyBook.Default) is { Allowed: true, RequestOrder: true });
        Assert.True(VisitAllowance.For(null, [], Mar(10), true, PolicyBook.Default) is { Allowed: true, RequestOrder: true, Code: OrderCodes.NoOrder });
    }

    [Fact]
    public void A_week_defined_anew_counts_from_the_first_full_week_after_the_change()
    {
        var given = Picc().AgencyRule("frequency.weekstart", 1, "weekday", Mar(10));

        Assert.Equal(Mar(7), VisitFrequency.FirstDayOfWeek(Mar(9), given.Policy));
        Assert.Equal(Mar(15), VisitFrequency.FirstDayOfWeek(Mar(16), given.Policy));

        // Wednesday 10 March to Saturday 13 end the week as it began; Sunday 14 stands alone; from Monday 15 weeks run Monday to Sunday.
        Assert.All([7, 10, 13], day => Assert.Equal((Mar(7), Mar(13)), (VisitFrequency.FirstDayOfWeek(Mar(day), given.Policy), VisitFrequency.LastDayOfWeek(Mar(day), given.Policy))));
        Assert.Equal((Mar(14), Mar(14)), (VisitFrequency.FirstDayOfWeek(Mar(14), given.Policy), VisitFrequency.LastDayOfWeek(Mar(14), given.Policy)));
        Assert.All([15, 21], day => Assert.Equal((Mar(15), Mar(21)), (VisitFrequency.FirstDayOfWeek(Mar(day), given.Policy), VisitFrequency.LastDayOfWeek(Mar(day), given.Policy))));
    }
}
