using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Ledger;

/// <summary>The rows of the table seen from outside: what a recorded event does to the windows.</summary>
public sealed class WhatResetsWhat
{
    private static Given TwoLumens => Picc(2).Dressing(Mar(1)).Connector("A", Mar(1)).Connector("B", Mar(1))
        .Event(LineEventKind.Flushed, Mar(1), but: e => e with { LumensUsed = ["A", "B"] });

    [Fact]
    public void A_dressing_change_resets_a_connector_only_when_it_says_so()
    {
        var given = TwoLumens.Event(LineEventKind.DressingChanged, Mar(6), but: e => e with { Dressing = DressingKind.Film, ConnectorsChanged = ["A"] });

        Assert.Equal(Mar(13), given.Window(CareItem.Connector, Mar(6), 12, "A").LastDay);
        Assert.Equal(Mar(8), given.Window(CareItem.Connector, Mar(6), 12, "B").LastDay);
    }

    [Fact]
    public void Securement_and_outside_length_go_with_the_dressing()
    {
        var given = TwoLumens;

        var dressing = given.Window(CareItem.Dressing, Mar(6));
        Assert.Equal(dressing.LateFrom, given.Window(CareItem.Securement, Mar(6)).LateFrom);
        Assert.Equal(dressing.LateFrom, given.Window(CareItem.OutsideLength, Mar(6)).LateFrom);
    }

    [Fact]
    public void Film_to_gauze_shortens_to_two_days() =>
        Assert.Equal(Mar(5), TwoLumens.Dressing(Mar(3), kind: DressingKind.Gauze).Window(CareItem.Dressing, Mar(4)).LastDay);

    [Fact]
    public void Port_access_resets_needle_dressing_and_connector_as_one_event()
    {
        var given = Port().Event(LineEventKind.PortAccessed, Mar(2));

        var window = given.Window(CareItem.PortNeedle, Mar(3));
        Assert.Equal((Mar(7), Mar(9)), (window.OpensOn, window.LastDay));
        Assert.Empty(given.Windows(CareItem.Dressing, Mar(3)));
        Assert.Empty(given.Windows(CareItem.Connector, Mar(3)));
        Assert.Empty(given.Windows(CareItem.PortFlush, Mar(3)));
    }

    [Fact]
    public void Taking_the_needle_out_ends_its_clock_and_starts_the_idle_flush()
    {
        var given = Port().Event(LineEventKind.PortAccessed, Mar(2)).Event(LineEventKind.PortDeaccessed, Mar(4));

        Assert.Empty(given.Windows(CareItem.PortNeedle, Mar(5)));
        Assert.Equal(new NodaTime.LocalDate(2027, 4, 1), given.Window(CareItem.PortFlush, Mar(5)).LastDay);
    }

    [Fact]
    public void A_connector_change_on_one_lumen_leaves_the_other() =>
        Assert.Equal(Mar(8), TwoLumens.Connector("A", Mar(6)).Window(CareItem.Connector, Mar(6), 20, "B").LastDay);

    [Theory]
    [InlineData(LineEventKind.Flushed)]
    [InlineData(LineEventKind.DoseGiven)]
    [InlineData(LineEventKind.BloodDrawn)]
    [InlineData(LineEventKind.BloodCultureDrawn)]
    public void Any_use_of_a_lumen_resets_the_flush_of_that_lumen_only(LineEventKind kind)
    {
        var given = TwoLumens.Event(kind, Mar(5), but: e => e with { LumensUsed = ["A"] });

        Assert.Equal(Mar(12), given.Window(CareItem.LumenFlush, Mar(6), lumen: "A").LastDay);
        Assert.Equal(Mar(8), given.Window(CareItem.LumenFlush, Mar(6), lumen: "B").LastDay);
        Assert.Equal(Mar(8), given.Window(CareItem.Dressing, Mar(6)).LastDay);
    }

    [Fact]
    public void A_blood_culture_is_drawn_through_a_fresh_connector() =>
        Assert.Equal(Mar(12), TwoLumens.Event(LineEventKind.BloodCultureDrawn, Mar(5), but: e => e with { LumensUsed = ["A"] })
            .Window(CareItem.Connector, Mar(6), lumen: "A").LastDay);

    [Fact]
    public void Insertion_starts_the_clocks_and_locks_the_line_until_the_tip_is_confirmed()
    {
        var given = new Given().Line(LineKind.Picc, 1, but: l => l with { TipConfirmed = false })
            .Event(LineEventKind.Inserted, Mar(5), but: e => e with { Dressing = DressingKind.GauzeUnderFilm });

        var window = given.Window(CareItem.Dressing, Mar(6));
        Assert.Equal((Mar(6), Mar(7)), (window.OpensOn, window.LastDay));
        Assert.Single(given.AnswerAt(Mar(6)).Locks);
        Assert.Empty(given.Event(LineEventKind.TipConfirmed, Mar(5), 15).AnswerAt(Mar(6)).Locks);
    }

    [Fact]
    public void Exchange_over_a_wire_ends_the_old_line() =>
        Assert.DoesNotContain(TwoLumens.Event(LineEventKind.Exchanged, Mar(5)).AnswerAt(Mar(6)).Windows, w => w.Line is not null);

    [Fact]
    public void Removal_ends_every_clock_and_opens_the_site_check()
    {
        var windows = TwoLumens.Event(LineEventKind.Removed, Mar(11)).AnswerAt(Mar(11), 18).Windows.Where(w => w.Line is not null);

        var check = Assert.Single(windows);
        Assert.Equal((CareItem.RemovalSiteCheck, Mar(12), Mar(14)), (check.Item, check.OpensOn, check.LastDay));
    }

    [Fact]
    public void A_look_after_removal_closes_the_site_check() =>
        Assert.DoesNotContain(
            TwoLumens.Event(LineEventKind.Removed, Mar(11)).Event(LineEventKind.SiteChecked, Mar(12)).AnswerAt(Mar(13)).Windows, w => w.Line is not null);

    [Fact]
    public void Clocks_run_on_during_a_hospital_stay()
    {
        var answer = TwoLumens.Event(LineEventKind.AdmittedToHospital, Mar(6), but: e => e with { Line = null }).AnswerAt(Mar(10));

        Assert.NotNull(answer.OnHold);
        Assert.True(answer.Windows.Single(w => w.Item == CareItem.Dressing).IsLateAt(answer.AsOf));
    }

    [Fact]
    public void A_clinics_change_counts_when_it_has_a_date_and_not_when_it_has_none()
    {
        var dated = TwoLumens.Event(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(5)),
            e => e with { Performer = PerformerKind.Outside, PerformerName = "clinic", Dressing = DressingKind.Film });
        Assert.Equal(Mar(12), dated.Window(CareItem.Dressing, Mar(6)).LastDay);

        var undated = TwoLumens.Event(LineEventKind.DressingChanged, null,
            e => e with { Performer = PerformerKind.Outside, Dressing = DressingKind.Film, RecordedAt = At(Mar(6), 9) });
        Assert.Equal(WindowStanding.DateUnknown, undated.Window(CareItem.Dressing, Mar(6), 12).Standing);
    }

    [Fact]
    public void A_validated_caregivers_change_resets_and_opens_no_check()
    {
        var given = TwoLumens.Validated(CareItem.Dressing, Mar(31)).Event(LineEventKind.DressingChanged, Mar(6), but: e => e with
        {
            Dressing = DressingKind.Film,
            Performer = PerformerKind.Caregiver,
            PerformerName = "spouse",
            Certainty = Certainty.CaregiverByPhone,
        });

        Assert.Equal(Mar(13), given.Window(CareItem.Dressing, Mar(7)).LastDay);
        Assert.Empty(given.Windows(CareItem.NurseCheck, Mar(7)));
    }

    [Fact]
    public void A_caregivers_change_without_validation_is_kept_and_opens_a_nurse_check_within_a_day()
    {
        var given = TwoLumens.Event(LineEventKind.DressingChanged, Mar(6), but: e => e with
        {
            Dressing = DressingKind.Film,
            Performer = PerformerKind.Caregiver,
            PerformerName = "son",
        });

        Assert.Equal(Mar(13), given.Window(CareItem.Dressing, Mar(7)).LastDay);
        Assert.Equal(Mar(7), given.Window(CareItem.NurseCheck, Mar(7)).LastDay);
        Assert.Empty(given.Event(LineEventKind.SiteChecked, Mar(7), 9).Windows(CareItem.NurseCheck, Mar(7), 10));
    }

    [Theory]
    [InlineData(LineEventKind.Refused)]
    [InlineData(LineEventKind.Missed)]
    [InlineData(LineEventKind.NotDone)]
    [InlineData(LineEventKind.PhoneCall)]
    public void Refusal_missed_visit_and_phone_call_touch_no_clock(LineEventKind kind)
    {
        static string Dates(CareAnswer answer) => string.Join("; ", answer.Windows.Select(w => $"{w.Item} {w.Lumen} {w.Opens} {w.LateFrom}"));

        Assert.Equal(Dates(TwoLumens.AnswerAt(Mar(6), 20)), Dates(TwoLumens.Event(kind, Mar(6)).AnswerAt(Mar(6), 20)));
    }
}
