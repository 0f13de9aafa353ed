using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Ledger;

public sealed class Corrections
{
    private static Given WrongDay => Picc().Dressing(Mar(3)).Dressing(Mar(6));

    [Fact]
    public void A_correction_voids_and_replaces_and_everything_downstream_moves()
    {
        var given = WrongDay.Event(LineEventKind.DressingChanged, Mar(5), but: e => e with { Dressing = DressingKind.Film, Voids = new EventId("E2") });

        Assert.Equal(Mar(12), given.Window(CareItem.Dressing, Mar(7)).LastDay);
    }

    [Fact]
    public void Voiding_without_a_replacement_brings_the_date_before_back() =>
        Assert.Equal(Mar(10), WrongDay.Event(LineEventKind.PhoneCall, Mar(7), but: e => e with { Voids = new EventId("E2") })
            .Window(CareItem.Dressing, Mar(8)).LastDay);

    [Fact]
    public void A_correction_of_a_correction_does_not_bring_the_first_mistake_back()
    {
        var given = WrongDay
            .Event(LineEventKind.DressingChanged, Mar(5), but: e => e with { Dressing = DressingKind.Film, Voids = new EventId("E2") })
            .Event(LineEventKind.DressingChanged, Mar(4), but: e => e with { Dressing = DressingKind.Film, Voids = new EventId("E3") });

        Assert.Equal(Mar(11), given.Window(CareItem.Dressing, Mar(7)).LastDay);
    }

    [Fact]
    public void What_lies_in_the_future_does_not_count_yet() =>
        Assert.Equal(Mar(10), WrongDay.Window(CareItem.Dressing, Mar(5)).LastDay);

    [Fact]
    public void A_guess_is_never_an_anchor() =>
        Assert.Equal(WindowStanding.DateUnknown, Picc().Event(LineEventKind.DressingChanged, Mar(3), but: e => e with
        {
            Dressing = DressingKind.Film,
            Certainty = Certainty.Guess,
        }).Window(CareItem.Dressing, Mar(4)).Standing);

    [Fact]
    public void A_date_read_off_the_dressing_replaces_a_later_date_told_before()
    {
        var given = Picc()
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(5)), e => e with { Certainty = Certainty.DischargePaper, RecordedAt = At(Mar(8), 9) })
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(3)), e => e with { Certainty = Certainty.WrittenOnDressing, RecordedAt = At(Mar(8), 14) });

        Assert.Equal(Mar(10), given.Window(CareItem.Dressing, Mar(8), 15).LastDay);
        Assert.DoesNotContain(given.AnswerAt(Mar(8), 15).Decisions, d => d.Code == DecisionCodes.ContradictedDate);
    }

    [Fact]
    public void A_weaker_word_after_a_date_read_off_the_dressing_asks()
    {
        var given = Picc()
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(3)), e => e with { Certainty = Certainty.WrittenOnDressing, RecordedAt = At(Mar(8), 9) })
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(5)), e => e with { Certainty = Certainty.DischargePaper, RecordedAt = At(Mar(8), 14) });

        Assert.Equal(Mar(10), given.Window(CareItem.Dressing, Mar(8), 15).LastDay);
        Assert.Contains(given.AnswerAt(Mar(8), 15).Decisions, d => d.Code == DecisionCodes.ContradictedDate);
    }

    [Fact]
    public void A_real_change_after_the_date_was_read_counts_whoever_tells_of_it() =>
        Assert.Equal(Mar(16), Picc()
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(3)), e => e with { Certainty = Certainty.WrittenOnDressing, RecordedAt = At(Mar(8), 9) })
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(9)), e => e with { Certainty = Certainty.CaregiverByPhone, RecordedAt = At(Mar(9), 14) })
            .Window(CareItem.Dressing, Mar(10)).LastDay);

    [Fact]
    public void After_hospital_a_date_read_off_the_dressing_reconciles_the_item() =>
        Assert.Equal(Mar(8), Picc().Event(LineEventKind.AdmittedToHospital, Mar(6)).Event(LineEventKind.ReturnedHome, Mar(10))
            .Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(1)), e => e with { Certainty = Certainty.WrittenOnDressing, RecordedAt = At(Mar(10), 18) })
            .Window(CareItem.Dressing, Mar(11)).LastDay);

    [Fact]
    public void A_late_entry_of_care_before_the_admission_reconciles_nothing() =>
        Assert.Equal(WindowStanding.DateUnknown, Picc().Event(LineEventKind.AdmittedToHospital, Mar(6)).Event(LineEventKind.ReturnedHome, Mar(10))
            .Event(LineEventKind.DressingChanged, Mar(5), but: e => e with { Dressing = DressingKind.Film, RecordedAt = At(Mar(10), 18) })
            .Window(CareItem.Dressing, Mar(11)).Standing);

    [Fact]
    public void A_change_during_the_stay_counts() =>
        Assert.Equal(Mar(15), Picc().Dressing(Mar(1)).Event(LineEventKind.AdmittedToHospital, Mar(6))
            .Event(LineEventKind.DressingChanged, Mar(8), but: e => e with { Dressing = DressingKind.Film, Performer = PerformerKind.Outside })
            .Event(LineEventKind.ReturnedHome, Mar(10)).Window(CareItem.Dressing, Mar(11)).LastDay);
}
