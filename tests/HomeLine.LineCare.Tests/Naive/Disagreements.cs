using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>Histories on which the engine and the clerk once disagreed and the clerk, reading the trade's rules, was right.
/// Common practice, no source.</summary>
public sealed class Disagreements
{
    private static readonly DateTimeZone Sydney = DateTimeZoneProviders.Tzdb["Australia/Sydney"];

    private static CareOrder Every(int days, string id, bool confirmed = false) =>
        AnOrder(OrderKind.Interval, id) with { Item = CareItem.Dressing, EveryDays = days, Confirmed = confirmed };

    [Fact]
    public void A_set_comes_down_with_the_port_needle()
    {
        var given = Port().Infusion(InfusionKind.Continuous, PerformerKind.Nurse).Event(LineEventKind.PortAccessed, Mar(2));
        Assert.Equal(At(Mar(6), 10), given.Window(CareItem.Set, Mar(3)).LateFrom);

        var taken = given.Event(LineEventKind.PortDeaccessed, Mar(4));
        Assert.Empty(taken.Windows(CareItem.Set, Mar(5)));
        Assert.Equal(At(Mar(9), 10), taken.Event(LineEventKind.PortAccessed, Mar(5)).Window(CareItem.Set, Mar(6)).LateFrom);
    }

    [Fact]
    public void Care_on_a_journey_is_ordered_by_the_moment_and_not_by_the_date_on_the_wall()
    {
        var inSydney = Mar(6).At(new LocalTime(8, 0)).InZoneStrictly(Sydney).ToInstant();
        var given = Picc().Event(LineEventKind.DressingChanged, CareMoment.Exactly(inSydney, Sydney), e => e with { Dressing = DressingKind.Film })
            .Dressing(Mar(5), 18, kind: DressingKind.Gauze);

        Assert.True(At(Mar(5), 18) > inSydney);
        Assert.Equal("dressing.gauze.max", given.Window(CareItem.Dressing, Mar(6)).Because.RuleId);
    }

    [Fact]
    public void Care_just_done_on_a_journey_counts_although_its_date_is_tomorrow_at_home()
    {
        var inSydney = Mar(6).At(new LocalTime(8, 0)).InZoneStrictly(Sydney).ToInstant();
        var given = Picc().Event(LineEventKind.DressingChanged, CareMoment.Exactly(inSydney, Sydney), e => e with { Dressing = DressingKind.Film });

        Assert.Equal(WindowStanding.Running, given.Window(CareItem.Dressing, Mar(5), 20).Standing);
    }

    [Fact]
    public void Orders_give_the_same_window_whichever_was_written_first()
    {
        var one = Picc().Dressing(Mar(3)).Order(Every(14, "O1", confirmed: true)).Order(Every(10, "O2"));
        var other = Picc().Dressing(Mar(3)).Order(Every(10, "O2")).Order(Every(14, "O1", confirmed: true));

        Assert.Equal(Mar(13), one.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.Equal(Mar(13), other.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.All([one, other], given => Assert.Single(given.AnswerAt(Mar(8)).Decisions, d => d.Code == DecisionCodes.LooserOrder));
    }

    [Fact]
    public void Of_two_confirmed_longer_orders_the_shorter_stands()
    {
        var one = Picc().Dressing(Mar(3)).Order(Every(14, "O1", confirmed: true)).Order(Every(10, "O2", confirmed: true));
        var other = Picc().Dressing(Mar(3)).Order(Every(10, "O2", confirmed: true)).Order(Every(14, "O1", confirmed: true));

        Assert.Equal(Mar(13), one.Window(CareItem.Dressing, Mar(8)).LastDay);
        Assert.Equal(Mar(13), other.Window(CareItem.Dressing, Mar(8)).LastDay);
    }

    [Fact]
    public void Care_at_the_very_minute_of_admission_was_before_the_stay() =>
        Assert.Equal(WindowStanding.DateUnknown, Picc().Dressing(Mar(5), 10).Event(LineEventKind.AdmittedToHospital, Mar(5), 10)
            .Event(LineEventKind.ReturnedHome, Mar(8)).Window(CareItem.Dressing, Mar(9)).Standing);

    [Fact]
    public void An_order_stricter_than_policy_asks_nothing_beside_a_stricter_one() =>
        Assert.DoesNotContain(
            Picc().Dressing(Mar(3)).Order(Every(4, "O1")).Order(Every(6, "O2")).AnswerAt(Mar(5)).Decisions, d => d.Code == DecisionCodes.LooserOrder);

    [Fact]
    public void An_order_that_ends_before_it_starts_asks_nothing() =>
        Assert.DoesNotContain(
            Picc().Order(AnOrder(OrderKind.Labs) with { EveryDays = 0, StartsOn = Mar(12), EndsOn = Mar(2) }).AnswerAt(Mar(8)).Decisions,
            d => d.Code == DecisionCodes.OrderIntervalOutOfRange);

    [Fact]
    public void Of_two_exceptions_to_a_floor_the_one_that_holds_back_longest_counts()
    {
        static Given With(params decimal[] floors) => Picc().Dressing(Mar(3)).But(care => care with
        {
            Exceptions = [.. floors.Select(days => new CareException(Patient, "dressing.film.min", days, "Clinical manager", Mar(31), "skin"))],
        });

        Assert.Equal(Mar(9), With(6, 4).Window(CareItem.Dressing, Mar(5)).OpensOn);
        Assert.Equal(Mar(9), With(4, 6).Window(CareItem.Dressing, Mar(5)).OpensOn);
    }

    [Fact]
    public void A_dose_through_the_only_lumen_ends_its_container_withtakennaming_it() =>
        Assert.Empty(Picc().Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(8), 20)
            .Event(LineEventKind.DoseGiven, Mar(9), 8).Windows(CareItem.Set, Mar(9), 9));

    [Fact]
    public void Care_by_somebody_not_validated_opens_a_check_even_when_nobody_knows_its_day() =>
        Assert.Equal(Mar(9), Picc().Event(LineEventKind.DressingChanged, null, e => e with
        {
            Dressing = DressingKind.Film,
            Performer = PerformerKind.Caregiver,
            PerformerName = "son",
            RecordedAt = At(Mar(8), 9),
        }).Window(CareItem.NurseCheck, Mar(8), 10).LastDay);

    [Fact]
    public void An_admission_nobody_knows_the_day_of_pauses_planning_from_the_day_it_was_told() =>
        Assert.Equal(Mar(6), Picc().Event(LineEventKind.AdmittedToHospital, null, e => e with { Line = null, RecordedAt = At(Mar(6), 9) })
            .AnswerAt(Mar(8)).OnHold!.From);

    [Fact]
    public void A_draw_before_an_orders_first_day_makes_nothing_late()
    {
        var window = Picc().Event(LineEventKind.LabsDrawn, Mar(1)).Order(AnOrder(OrderKind.Labs) with { EveryDays = 7, StartsOn = Mar(12) })
            .Window(CareItem.Labs, Mar(12));

        Assert.Equal(Mar(19), window.LastDay);
    }

    [Fact]
    public void A_clinic_does_not_renew_a_caregivers_validation()
    {
        var expected = new OutsideCare(Patient, First, Mar(9), At(Mar(10), 18), "the clinic", [.. Enum.GetValues<CareItem>()]);
        var given = Picc().Dressing(Mar(3)).But(care => care with
        {
            Outside = [expected],
            Caregivers = [new CaregiverValidation(Patient, "spouse", CareItem.Set, Mar(20), First)],
        });

        Assert.Equal(PerformerKind.Outside, given.Window(CareItem.Dressing, Mar(8)).Owner);
        Assert.Equal(PerformerKind.Nurse, given.Window(CareItem.CaregiverValidation, Mar(8)).Owner);
    }
}
