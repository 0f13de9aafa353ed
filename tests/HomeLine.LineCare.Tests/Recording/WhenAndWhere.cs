using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using static HomeLine.LineCare.Tests.Given;
using static HomeLine.LineCare.Tests.Recording.Would;

namespace HomeLine.LineCare.Tests.Recording;

public sealed class WhenAndWhere
{
    private static readonly Func<LineEvent, LineEvent> Film = entry => entry with { Dressing = DressingKind.Film };

    [Fact]
    public void An_ordinary_change_inside_its_window_raises_nothing() =>
        Picc().Dressing(Mar(2)).IsQuiet(Entry(LineEventKind.DressingChanged, Mar(8), 10, Film));

    [Fact]
    public void Care_in_the_future_is_refused_by_day_and_by_minute()
    {
        Assert.Equal(ReplyWeight.Refuse, Picc().Reply(Entry(LineEventKind.DressingChanged, Mar(8), 13, Film), RecordingCodes.InTheFuture).Weight);
        Assert.Equal(ReplyWeight.Refuse, Picc().Reply(Entry(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(9)), Film), RecordingCodes.InTheFuture).Weight);
    }

    [Fact]
    public void A_clinics_report_for_tomorrow_is_refused() =>
        Assert.Equal(ReplyWeight.Refuse, Picc().Reply(
            Entry(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(9)), e => e with { Dressing = DressingKind.Film, Performer = PerformerKind.Outside }),
            RecordingCodes.InTheFuture).Weight);

    [Fact]
    public void Care_older_than_the_line_asks_which_line_is_meant() =>
        Assert.Equal(ReplyWeight.Ask, new Given().Line(LineKind.Picc, 1, but: l => l with { InsertedOn = Mar(5) })
            .Reply(Entry(LineEventKind.DressingChanged, Mar(4), 10, Film), RecordingCodes.BeforeInsertion).Weight);

    [Fact]
    public void Care_without_a_date_is_asked_about_and_a_guess_is_told_to_start_no_clock()
    {
        Assert.Equal(ReplyWeight.Ask, Picc().Reply(Entry(LineEventKind.DressingChanged, null, Film), RecordingCodes.DateMissing).Weight);
        Assert.Equal(ReplyWeight.Tell, Picc().Reply(
            Entry(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(5)), e => e with { Dressing = DressingKind.Film, Certainty = Certainty.Guess }),
            RecordingCodes.DateGuessed).Weight);
    }

    [Theory]
    [InlineData(LineEventKind.SetChanged)]
    [InlineData(LineEventKind.ConnectorChanged)]
    public void An_hour_clock_asks_for_the_time(LineEventKind kind) =>
        Assert.Equal(ReplyWeight.Ask, Picc().Reply(
            Entry(kind, CareMoment.SometimeOn(Mar(8)), e => e with { LumensUsed = ["A"], ConnectorsChanged = kind == LineEventKind.ConnectorChanged ? ["A"] : [] }),
            RecordingCodes.TimeMissing).Weight);

    [Fact]
    public void A_dressing_needs_no_time() =>
        Assert.DoesNotContain(Picc().Replies(Entry(LineEventKind.DressingChanged, CareMoment.SometimeOn(Mar(8)), Film)), r => r.Code == RecordingCodes.TimeMissing);

    [Fact]
    public void A_line_that_is_not_there_and_a_line_that_came_out_are_refused()
    {
        Assert.Equal(ReplyWeight.Refuse, Picc().Reply(Entry(LineEventKind.Flushed, Mar(8), 9, e => e with { Line = new LineId("P1-9") }), RecordingCodes.LineUnknown).Weight);
        Assert.Equal(ReplyWeight.Refuse, Picc().Event(LineEventKind.Removed, Mar(5)).Reply(Entry(LineEventKind.SealReported, Mar(8), 9), RecordingCodes.LineRemoved).Weight);
        Assert.Equal(ReplyWeight.Refuse, Picc().Reply(Entry(LineEventKind.Flushed, Mar(8), 9, e => e with { Line = null }), RecordingCodes.LineUnknown).Weight);
    }

    [Fact]
    public void Two_lumens_want_one_named_and_only_one_that_is_there()
    {
        Assert.Equal(ReplyWeight.Ask, Picc(2).Reply(Entry(LineEventKind.Flushed, Mar(8), 9), RecordingCodes.LumenMissing).Weight);
        Assert.Equal("C", Picc(2).Reply(Entry(LineEventKind.Flushed, Mar(8), 9, e => e with { LumensUsed = ["C"] }), RecordingCodes.LumenUnknown).Lumen);
        Picc().IsQuiet(Entry(LineEventKind.Flushed, Mar(8), 9));
    }

    [Fact]
    public void A_flush_of_an_occluded_lumen_asks_whether_it_was_that_one()
    {
        var given = Picc(2).Event(LineEventKind.LumenOccluded, Mar(6), but: e => e with { LumensUsed = ["B"] });

        Assert.Equal("B", given.Reply(Entry(LineEventKind.Flushed, Mar(8), 9, e => e with { LumensUsed = ["B"] }), RecordingCodes.LumenOccluded).Lumen);
        given.IsQuiet(Entry(LineEventKind.Flushed, Mar(8), 9, e => e with { LumensUsed = ["A"] }));
    }

    [Fact]
    public void Using_a_locked_line_is_asked_about()
    {
        var locked = new Given().Line(LineKind.Picc, 1, but: l => l with { TipConfirmed = false });

        Assert.Equal(ReplyWeight.Ask, locked.Reply(Entry(LineEventKind.DoseGiven, Mar(8), 9), RecordingCodes.LineLocked).Weight);
    }

    [Fact]
    public void A_lock_is_lifted_only_by_name_and_with_a_reason()
    {
        var locked = Picc().Event(LineEventKind.UseLocked, Mar(7));

        Assert.Equal(ReplyWeight.Refuse, locked.Reply(Entry(LineEventKind.UseReleased, Mar(8), 9), RecordingCodes.ReleaseUnsigned).Weight);
        Assert.Equal(ReplyWeight.Refuse, locked.Reply(
            Entry(LineEventKind.UseReleased, Mar(8), 9, e => e with { PerformerName = "spouse", Performer = PerformerKind.Caregiver, Note = "looks fine" }), RecordingCodes.ReleaseUnsigned).Weight);
        locked.IsQuiet(Entry(LineEventKind.UseReleased, Mar(8), 9, e => e with { PerformerName = "Hyssop Lanternlow", Note = "X-ray seen" }));
    }

    [Fact]
    public void A_correction_names_an_entry_that_is_there_and_was_not_corrected_before()
    {
        var given = Picc().Dressing(Mar(3));
        var correction = Entry(LineEventKind.DressingChanged, Mar(4), 10, e => e with { Dressing = DressingKind.Film, Voids = new EventId("E1") });

        given.IsQuiet(correction);
        Assert.Equal(ReplyWeight.Refuse, given.Reply(correction with { Voids = new EventId("E9") }, RecordingCodes.VoidedEntryUnknown).Weight);
        Assert.Equal(ReplyWeight.Refuse, given.Event(LineEventKind.DressingChanged, Mar(4), but: e => e with { Dressing = DressingKind.Film, Voids = new EventId("E1") })
            .Reply(correction, RecordingCodes.VoidedAlready).Weight);
    }

    [Fact]
    public void A_weaker_word_about_the_same_day_asks_which_is_right() =>
        Assert.Equal(ReplyWeight.Ask, Picc().Dressing(Mar(5)).Reply(
            Entry(LineEventKind.DressingChanged, Mar(5), 11, e => e with { Dressing = DressingKind.Gauze, Certainty = Certainty.CaregiverByPhone, Note = "told by phone" }),
            RecordingCodes.WeakerWord).Weight);

    [Fact]
    public void A_hold_without_a_first_day_starts_today_and_says_so()
    {
        var hold = HoldStart.Of(null, Mar(8));

        Assert.Equal(Mar(8), hold.From);
        Assert.Equal(RecordingCodes.HoldWithoutStart, hold.Flag!.Code);
        Assert.Null(HoldStart.Of(Mar(6), Mar(8)).Flag);
    }
}
