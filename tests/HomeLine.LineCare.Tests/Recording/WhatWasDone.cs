using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;
using static HomeLine.LineCare.Tests.Recording.Would;

namespace HomeLine.LineCare.Tests.Recording;

public sealed class WhatWasDone
{
    private static LineEvent Change(LocalDate day, DressingKind? kind, int hour = 10) =>
        Entry(LineEventKind.DressingChanged, day, hour, e => e with { Dressing = kind });

    private static LineEvent Connector(LocalDate day, int hour = 10, string note = "") =>
        Entry(LineEventKind.ConnectorChanged, day, hour, e => e with { ConnectorsChanged = ["A"], Note = note });

    [Fact]
    public void No_dressing_on_an_unhealed_line_is_refused_without_an_order()
    {
        Assert.Equal(ReplyWeight.Refuse, Picc().Dressing(Mar(1)).Reply(Change(Mar(8), DressingKind.None), RecordingCodes.BareSite).Weight);
        Picc().Dressing(Mar(1)).Order(AnOrder(OrderKind.Interval) with { Item = CareItem.Dressing })
            .IsQuiet(Change(Mar(8), DressingKind.None) with { Order = "O1" });
        new Given().Line(LineKind.Tunneled, 1, but: l => l with { ExitSiteHealed = true }).IsQuiet(Change(Mar(8), DressingKind.None));
    }

    [Fact]
    public void A_dressing_without_its_material_is_asked_about_and_at_insertion_counts_as_gauze()
    {
        Assert.Equal(ReplyWeight.Ask, Picc().Dressing(Mar(1)).Reply(Change(Mar(8), null), RecordingCodes.MaterialUnknown).Weight);
        Assert.Contains("gauze", Picc().Reply(Entry(LineEventKind.Inserted, Mar(8), 9), RecordingCodes.MaterialUnknown).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_needle_change_without_its_dressing_is_refused()
    {
        Assert.Equal(ReplyWeight.Refuse, Port().Reply(Entry(LineEventKind.PortAccessed, Mar(8), 9), RecordingCodes.NeedleWithoutDressing).Weight);
        Port().IsQuiet(Entry(LineEventKind.PortAccessed, Mar(8), 9, e => e with { Dressing = DressingKind.Film }));
    }

    [Fact]
    public void A_change_before_its_window_asks_why_unless_the_seal_was_reported_or_a_reason_is_given()
    {
        Assert.Equal(ReplyWeight.Ask, Picc().Dressing(Mar(5)).Reply(Change(Mar(8), DressingKind.Film), RecordingCodes.BeforeItOpens).Weight);
        Picc().Dressing(Mar(5)).Seal(SealFinding.EdgeLifted, Mar(8), 8).IsQuiet(Change(Mar(8), DressingKind.Film));
        Picc().Dressing(Mar(5)).IsQuiet(Change(Mar(8), DressingKind.Film) with { Note = "leaves for six days tomorrow" });
    }

    [Fact]
    public void Chlorhexidine_on_an_allergic_patient_or_an_infant_is_asked_about_at_once()
    {
        var allergic = Picc().Dressing(Mar(1)).But(c => c with { Risks = RiskFactors.ChlorhexidineAllergy });
        var infant = Picc().Dressing(Mar(1)).But(c => c with { BornOn = new LocalDate(2027, 1, 18) });
        var unknown = Picc().Dressing(Mar(1)).But(c => c with { BornOn = null });

        Assert.Equal(ReplyWeight.Ask, allergic.Reply(Change(Mar(8), DressingKind.AntisepticFilm), DecisionCodes.Chlorhexidine).Weight);
        Assert.Equal(ReplyWeight.Ask, infant.Reply(Change(Mar(8), DressingKind.AntisepticFilm), DecisionCodes.Chlorhexidine).Weight);
        Assert.Equal(ReplyWeight.Ask, unknown.Reply(Change(Mar(8), DressingKind.AntisepticFilm), DecisionCodes.BirthDateMissing).Weight);
    }

    [Fact]
    public void A_connector_sooner_than_96_hours_is_asked_about_unless_it_was_found_compromised()
    {
        var given = Picc().Connector("A", Mar(5), 14);

        Assert.Equal(ReplyWeight.Ask, given.Reply(Connector(Mar(8)), RecordingCodes.ConnectorTooSoon).Weight);
        given.Event(LineEventKind.ConnectorCompromised, Mar(8), 9, but: e => e with { LumensUsed = ["A"] }).IsQuiet(Connector(Mar(8)));
        Picc().Connector("A", Mar(3), 14).IsQuiet(Connector(Mar(8)));
    }

    [Fact]
    public void A_third_change_in_four_days_without_a_trigger_asks_the_reason()
    {
        var given = Picc().Connector("A", Mar(5), 9).Connector("A", Mar(7), 9);

        Assert.Contains("third", given.Reply(Connector(Mar(8)), RecordingCodes.ConnectorTooOften).Sentence, StringComparison.Ordinal);
        given.IsQuiet(Connector(Mar(8), note: "blood left inside after the draw"));
        Assert.DoesNotContain(Picc().Connector("A", Mar(1), 9).Connector("A", Mar(2), 9).Replies(Connector(Mar(8))), r => r.Code == RecordingCodes.ConnectorTooOften);
    }

    [Fact]
    public void A_fresh_connector_before_a_blood_culture_is_never_too_soon()
    {
        var given = Picc().Connector("A", Mar(7), 9).Order(AnOrder(OrderKind.Labs));

        given.IsQuiet(Connector(Mar(8), 9), Entry(LineEventKind.BloodCultureDrawn, Mar(8), 10, e => e with { Id = new EventId("culture"), LumensUsed = ["A"] }));
    }

    [Theory]
    [InlineData(-0.5)]
    [InlineData(60.5)]
    public void A_length_no_line_can_have_is_refused(double length) =>
        Assert.Equal(ReplyWeight.Refuse, Picc().Reply(
            Entry(LineEventKind.Measured, Mar(8), 9, e => e with { OutsideLengthCm = (decimal)length }), RecordingCodes.LengthOutOfRange).Weight);

    [Fact]
    public void Inches_are_converted_and_have_to_be_confirmed()
    {
        var length = MeasuredLength.FromInches(1.25m);

        Assert.Equal(3.2m, length.Centimetres);
        Assert.Equal((RecordingCodes.LengthInInches, ReplyWeight.Ask), (length.Confirm!.Code, length.Confirm.Weight));
        Assert.Null(MeasuredLength.FromCentimetres(3).Confirm);
    }

    [Fact]
    public void Growth_is_told_before_it_is_saved() =>
        Assert.Equal(ReplyWeight.Tell, new Given().Line(LineKind.Picc, 1, but: l => l with { OutsideLengthCm = 2 })
            .Reply(Entry(LineEventKind.Measured, Mar(8), 9, e => e with { OutsideLengthCm = 4 }), DecisionCodes.LengthGrew).Weight);

    [Fact]
    public void A_wider_arm_than_the_baseline_by_the_step_is_told_and_a_girth_no_arm_has_refused()
    {
        var given = Picc().Event(LineEventKind.Measured, Mar(1), but: e => e with { ArmGirthCm = 28 });

        Assert.Equal(ReplyWeight.Tell, given.Reply(Entry(LineEventKind.Measured, Mar(8), 9, e => e with { ArmGirthCm = 31 }), DecisionCodes.GirthRose).Weight);
        given.IsQuiet(Entry(LineEventKind.Measured, Mar(8), 9, e => e with { ArmGirthCm = 30.9m }));
        Assert.Equal(ReplyWeight.Refuse, given.Reply(Entry(LineEventKind.Measured, Mar(8), 9, e => e with { ArmGirthCm = 310 }), RecordingCodes.GirthOutOfRange).Weight);
    }

    [Fact]
    public void A_removed_catheter_shorter_than_what_went_in_tells_to_call_the_emergency_number()
    {
        var given = new Given().Line(LineKind.Picc, 1, but: l => l with { InsertedLengthCm = 40 })
            .Order(AnOrder(OrderKind.Removal) with { Line = First, Dates = [Mar(8)] });

        var reply = given.Reply(Entry(LineEventKind.Removed, Mar(8), 9, e => e with { OutsideLengthCm = 37 }), DecisionCodes.RemovedShorter);
        Assert.Contains("emergency number now", reply.Sentence, StringComparison.Ordinal);
        Assert.Equal(ReplyWeight.Ask, given.Reply(Entry(LineEventKind.Removed, Mar(8), 9), RecordingCodes.RemovedUnmeasured).Weight);
        given.IsQuiet(Entry(LineEventKind.Removed, Mar(8), 9, e => e with { OutsideLengthCm = 40 }));
    }

    [Fact]
    public void Removal_culture_and_declotting_without_an_order_are_asked_about_and_stay_facts()
    {
        Assert.Equal(ReplyWeight.Ask, Picc().Reply(Entry(LineEventKind.Removed, Mar(8), 9), RecordingCodes.WithoutOrder).Weight);
        Assert.Equal(ReplyWeight.Ask, Picc().Reply(Entry(LineEventKind.BloodCultureDrawn, Mar(8), 9), RecordingCodes.WithoutOrder).Weight);
        Assert.Equal(ReplyWeight.Ask, Picc().Reply(Entry(LineEventKind.LumenCleared, Mar(8), 9), RecordingCodes.WithoutOrder).Weight);
    }

    [Fact]
    public void A_second_report_within_two_hours_is_one_finding_and_the_earlier_deadline_stands()
    {
        var given = Picc().Dressing(Mar(5)).Seal(SealFinding.EdgeLifted, Mar(8), 8);
        var second = Entry(LineEventKind.SealReported, Mar(8), 9, e => e with { Seal = SealFinding.EdgeLifted, PerformerName = "daughter" });

        Assert.Equal(ReplyWeight.Tell, given.Reply(second, RecordingCodes.SealReportedAlready).Weight);
        given.IsQuiet(second with { Performed = CareMoment.Exactly(At(Mar(8), 11), Zone) });
        var both = given.But(c => c with { Events = c.Events.Add(second) });
        Assert.Equal(given.Window(CareItem.Dressing, Mar(8), 12).LateFrom, both.Window(CareItem.Dressing, Mar(8), 12).LateFrom);
        Assert.Equal(3, both.Care.Events.Length);
    }

    [Fact]
    public void A_report_that_names_nothing_found_asks_what_it_was() =>
        Assert.Equal(ReplyWeight.Ask, Picc().Dressing(Mar(5)).Reply(Entry(LineEventKind.SealReported, Mar(8), 9), RecordingCodes.SealFindingMissing).Weight);

    [Fact]
    public void Care_by_a_caregiver_not_validated_is_kept_as_unverified() =>
        Assert.Equal(ReplyWeight.Tell, Picc().Dressing(Mar(1)).Reply(
            Change(Mar(8), DressingKind.Film) with { Performer = PerformerKind.Caregiver, PerformerName = "son" }, DecisionCodes.UnverifiedCare).Weight);

    [Fact]
    public void Refusals_come_first() =>
        Assert.Equal(ReplyWeight.Refuse, Picc(2).Replies(
            Entry(LineEventKind.Flushed, Mar(8), 9),
            Entry(LineEventKind.Measured, Mar(8), 9, e => e with { Id = new EventId("m"), OutsideLengthCm = 99 }))[0].Weight);
}
