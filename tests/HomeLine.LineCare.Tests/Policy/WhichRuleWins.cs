using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Policy;

public sealed class WhichRuleWins
{
    private static readonly LocalDate LongAgo = new(2026, 1, 1);

    private static CareOrder Every(int days, bool confirmed = false) =>
        AnOrder(OrderKind.Interval) with { Item = CareItem.Dressing, EveryDays = days, Confirmed = confirmed };

    private static CareException Exception(decimal value, LocalDate through, string rule = "dressing.film.max") =>
        new(Patient, rule, value, "Clinical manager", through, "skin");

    private static Given FilmOnThe3rd => Picc().Dressing(Mar(3));

    [Fact]
    public void The_agencys_policy_stands_before_the_default()
    {
        var window = FilmOnThe3rd.AgencyRule("dressing.film.max", 6, "days", LongAgo).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(9), PolicyLevel.Agency), (window.LastDay, window.Because.Level));
        Assert.Contains("agency policy", window.Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_default_does_not_touch_what_the_agency_has_set() =>
        Assert.Equal(Mar(9), FilmOnThe3rd.AgencyRule("dressing.film.max", 6, "days", LongAgo)
            .Under(book => book.With(new PolicyRule("dressing.film.max", 4, "days", Mar(5), PolicyLevel.Default, RuleStanding.OwnDefault, "our own default")))
            .Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void The_agency_may_be_looser_than_the_default() =>
        Assert.Equal(new LocalDate(2027, 4, 8), Port().Event(LineCare.Ledger.LineEventKind.Flushed, new LocalDate(2027, 2, 11))
            .AgencyRule("port.flush.max", 56, "days", LongAgo).Window(CareItem.PortFlush, Mar(8)).LastDay);

    [Fact]
    public void A_longer_policy_counts_only_from_the_next_change()
    {
        var given = FilmOnThe3rd.AgencyRule("dressing.film.max", 9, "days", Mar(5)).AgencyRule("dressing.film.max", 7, "days", LongAgo);

        var window = given.Window(CareItem.Dressing, Mar(8));
        Assert.Equal(Mar(10), window.LastDay);
        Assert.Contains(window.Because.Overrode, note => note.Contains("from the next change", StringComparison.Ordinal));
        Assert.Equal(Mar(17), given.Dressing(Mar(8)).Window(CareItem.Dressing, Mar(9)).LastDay);
    }

    [Fact]
    public void A_shorter_policy_never_makes_care_late_before_it_took_effect()
    {
        var window = FilmOnThe3rd.AgencyRule("dressing.film.max", 3, "days", Mar(8)).Window(CareItem.Dressing, Mar(8));

        Assert.Equal(Mar(8), window.LastDay);
        Assert.False(window.IsLateAt(At(Mar(8), 23)));
    }

    [Fact]
    public void A_policy_that_shortens_and_lengthens_again_keeps_what_has_bitten() =>
        Assert.Equal(Mar(8), FilmOnThe3rd.AgencyRule("dressing.film.max", 5, "days", Mar(5)).AgencyRule("dressing.film.max", 7, "days", Mar(6))
            .Window(CareItem.Dressing, Mar(7)).LastDay);

    [Fact]
    public void A_new_policy_does_not_touch_an_interval_that_ended_before_it() =>
        Assert.Equal(Mar(10), FilmOnThe3rd.AgencyRule("dressing.film.max", 3, "days", Mar(15)).Window(CareItem.Dressing, Mar(16)).LastDay);

    [Fact]
    public void A_stricter_order_wins_without_a_question()
    {
        var given = FilmOnThe3rd.Order(Every(4));

        var window = given.Window(CareItem.Dressing, Mar(5));
        Assert.Equal((Mar(7), PolicyLevel.Order), (window.LastDay, window.Because.Level));
        Assert.DoesNotContain(given.AnswerAt(Mar(5)).Decisions, d => d.Code == DecisionCodes.LooserOrder);
    }

    [Fact]
    public void An_order_for_one_line_does_not_touch_another() =>
        Assert.Equal(Mar(10), FilmOnThe3rd.Order(Every(4) with { Line = new LineId("P1-2") }).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_looser_order_keeps_the_stricter_policy_and_asks()
    {
        var given = FilmOnThe3rd.Order(Every(14));

        Assert.Equal(Mar(10), given.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.Single(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LooserOrder);
    }

    [Fact]
    public void A_looser_order_counts_once_it_was_confirmed() =>
        Assert.Equal(Mar(17), FilmOnThe3rd.Order(Every(14, confirmed: true)).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_looser_confirmed_order_carries_no_further_than_its_own_end()
    {
        var order = Every(14, confirmed: true) with { EndsOn = Mar(12) };

        Assert.Equal(Mar(12), FilmOnThe3rd.Order(order).Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.Equal(Mar(10), FilmOnThe3rd.Order(order).Window(CareItem.Dressing, Mar(13)).LastDay);
    }

    [Fact]
    public void An_expired_order_does_not_count() =>
        Assert.Equal(Mar(10), FilmOnThe3rd.Order(Every(4) with { EndsOn = Mar(4) }).Window(CareItem.Dressing, Mar(5)).LastDay);

    [Fact]
    public void A_stricter_order_that_starts_mid_interval_does_not_make_yesterday_late() =>
        Assert.Equal(Mar(8), FilmOnThe3rd.Order(Every(2) with { StartsOn = Mar(8) }).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(366)]
    public void An_interval_outside_one_day_to_a_year_is_left_out_and_asked_about(int days)
    {
        var given = FilmOnThe3rd.Order(Every(days));

        Assert.Equal(Mar(10), given.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.Contains(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.OrderIntervalOutOfRange);
    }

    [Fact]
    public void A_patient_exception_stands_before_policy_and_names_its_owner()
    {
        var window = FilmOnThe3rd.But(c => c with { Exceptions = [Exception(10, Mar(31))] }).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(13), PolicyLevel.PatientException), (window.LastDay, window.Because.Level));
        Assert.Contains("Clinical manager", window.Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void An_exception_that_ends_mid_interval_lends_nothing_after_its_end() =>
        Assert.Equal(Mar(11), FilmOnThe3rd.But(c => c with { Exceptions = [Exception(10, Mar(11))] }).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void An_exception_that_has_ended_does_not_count() =>
        Assert.Equal(Mar(10), FilmOnThe3rd.But(c => c with { Exceptions = [Exception(10, Mar(7))] }).Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_stricter_order_wins_over_an_exception() =>
        Assert.Equal(Mar(7), FilmOnThe3rd.But(c => c with { Exceptions = [Exception(10, Mar(31))] }).Order(Every(4)).Window(CareItem.Dressing, Mar(5)).LastDay);

    [Fact]
    public void An_exception_can_hold_the_earliest_day_back() =>
        Assert.Equal(Mar(10), FilmOnThe3rd.But(c => c with { Exceptions = [Exception(7, Mar(31), "dressing.film.min")] })
            .Window(CareItem.Dressing, Mar(8)).OpensOn);

    [Fact]
    public void Gauze_may_be_set_to_48_hours_instead_of_2_days()
    {
        var window = Picc().Dressing(Mar(7), 15, kind: DressingKind.Gauze).AgencyRule("dressing.gauze.max", 48, "hours", LongAgo)
            .Window(CareItem.Dressing, Mar(8));

        Assert.Equal((ClockBasis.Hour, At(Mar(9), 15)), (window.Basis, window.LateFrom));
    }

    [Fact]
    public void Counting_the_day_of_change_as_day_one_ends_every_interval_a_day_sooner()
    {
        var window = FilmOnThe3rd.AgencyRule("calendar.dayofchange.isdayone", 1, "switch", LongAgo).Window(CareItem.Dressing, Mar(8));

        Assert.Equal((Mar(7), Mar(9)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void A_floor_raised_above_its_ceiling_later_on_is_a_problem()
    {
        var book = PolicyBook.Default.With(new PolicyRule("dressing.film.min", 8, "days", Mar(1), PolicyLevel.Agency, RuleStanding.OwnDefault, "Agency policy"));

        Assert.Contains("dressing.film.min (8 days) is above dressing.film.max", Assert.Single(PolicyCheck.Problems(book)), StringComparison.Ordinal);
        Assert.Empty(PolicyCheck.Problems(book.With(new PolicyRule("dressing.film.max", 9, "days", Mar(1), PolicyLevel.Agency, RuleStanding.OwnDefault, "Agency policy"))));
    }
}
