using CsCheck;
using HomeLine.Exchange.History;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Exchange.Tests.History;

/// <summary>Rows of plain words become a patient the clocks can read; a row that cannot be read says what would be right.</summary>
public sealed class HistoryTextTests
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 8, 11, 0);

    [Fact]
    public void An_entry_holds_everything_its_row_says()
    {
        LineHistory history = Good("""
            line L7: tunneled, lumens A B, sutured, outside 3 cm, inserted 41.5 cm, healed
            2027-03-03 15:10 dressing film, securement, connector A and B, lumen A, outside 2.5 cm, by caregiver daughter, by phone, recorded 2027-03-04 08:00, note itchy
            """);

        Line line = Assert.Single(history.Care.Lines);
        Assert.Equal((LineKind.Tunneled, SecurementKind.Sutured, 3m, 41.5m, true), (line.Kind, line.Securement, line.OutsideLengthCm, line.InsertedLengthCm, line.ExitSiteHealed));
        LineEvent entry = Assert.Single(history.Care.Events);
        Assert.Equal("row 2", entry.Id.Value);
        Assert.Equal(new LineId("L7"), entry.Line);
        Assert.Equal((LineEventKind.DressingChanged, DressingKind.Film), (entry.Kind, entry.Dressing!.Value));
        Assert.True(entry.SecurementChanged);
        Assert.Equal(["A", "B"], entry.ConnectorsChanged);
        Assert.Equal(["A"], entry.LumensUsed);
        Assert.Equal(2.5m, entry.OutsideLengthCm);
        Assert.Equal((PerformerKind.Caregiver, "daughter", Certainty.CaregiverByPhone), (entry.Performer, entry.PerformerName, entry.Certainty));
        Assert.Equal(Instant.FromUtc(2027, 3, 4, 13, 0), entry.RecordedAt);
        Assert.Equal("itchy", entry.Note);
    }

    [Fact]
    public void A_zone_named_after_the_entries_still_holds_for_them() =>
        Assert.Equal(Instant.FromUtc(2027, 3, 3, 21, 10), Good("""
            line PICC
            2027-03-03 15:10 dressing film
            zone America/Chicago
            """).Care.Events.Single().Performed!.Value.At);

    [Fact]
    public void What_is_written_down_after_now_is_not_known_yet()
    {
        LineHistory history = Good("""
            now 2027-03-04 12:00
            line PICC
            2027-03-03 dressing film
            2027-03-02 dressing film, recorded 2027-03-05 17:00
            """);

        Assert.Equal("row 3", Assert.Single(history.Care.Events).Id.Value);
        Assert.Equal("row 4", Assert.Single(history.NotYet).Id.Value);
    }

    [Fact]
    public void An_entry_of_unknown_date_is_no_anchor()
    {
        LineHistory history = Good("line PICC\nunknown date dressing film");

        DueWindow dressing = WhatIsDue.For(history.Care, history.Policy, history.Now).Windows.Single(w => w.Item == CareItem.Dressing);
        Assert.Equal(WindowStanding.DateUnknown, dressing.Standing);
    }

    [Theory]
    [InlineData("line PICC\n2027-03-14 02:30 dressing film", 2, "does not exist in America/New_York")]
    [InlineData("line PICC\n2027-11-07 01:30 dressing film", 2, "happens twice")]
    [InlineData("line PICC\n2027-02-30 dressing film", 2, "is no date")]
    [InlineData("line PICC\n2027-03-03 dressing foil", 2, "Known: antiseptic film, film, gauze")]
    [InlineData("line PICC\n2027-03-03 dressing film, ironed", 2, "not understood")]
    [InlineData("line PICC\n2027-03-03 connector 7", 2, "no lumen")]
    [InlineData("2027-03-03 dressing film", 1, "No line is named yet")]
    [InlineData("line PICC\nline port\n2027-03-03 dressing film", 3, "say which")]
    [InlineData("line PICC\n2027-03-03 dressing film, on L9", 2, "There is no line L9")]
    [InlineData("line L1: PICC\nline L1: port", 2, "already a line L1")]
    [InlineData("zone Moon/North", 1, "is no zone")]
    [InlineData("policy dressing.foil.max 5 from 2027-03-04", 1, "There is no rule")]
    [InlineData("order dressing every 0 days", 1, "from 1 to 365")]
    [InlineData("weather fine", 1, "A row begins with a date")]
    public void A_row_that_cannot_be_read_is_named_with_what_would_be_right(string text, int row, string says)
    {
        HistoryReading reading = HistoryText.Read(text, PolicyBook.Default, Zone, Now);

        Assert.Null(reading.History);
        HistoryFault fault = Assert.Single(reading.Faults);
        Assert.Equal(row, fault.Row);
        Assert.Contains(says, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_policy_row_that_leaves_no_window_is_refused()
    {
        HistoryReading reading = HistoryText.Read("policy dressing.film.max 400 from 2027-03-04", PolicyBook.Default, Zone, Now);

        Assert.Contains(reading.Faults, fault => fault.Message.Contains("over a year", StringComparison.Ordinal));
    }

    [Fact]
    public void A_text_without_end_is_refused_unread() =>
        Assert.Contains("at most", Assert.Single(HistoryText.Read(new string('x', 50_000), PolicyBook.Default, Zone, Now).Faults).Message, StringComparison.Ordinal);

    [Fact]
    public void Orders_keep_their_numbers()
    {
        LineHistory history = Good("""
            line PICC
            order 2 visits a week, 3 as needed (1 used), from 2027-03-01 to 2027-03-31
            order dressing every 14 days, confirmed
            order labs on Mon Thu
            order removal on 2027-03-11
            """);

        Assert.Equal((2, 3, 1), (history.Care.Orders[0].VisitsPerWeek, history.Care.Orders[0].AsNeededVisits, history.Care.Orders[0].AsNeededUsed));
        Assert.Equal((OrderKind.Interval, CareItem.Dressing, 14, true), (history.Care.Orders[1].Kind, history.Care.Orders[1].Item, history.Care.Orders[1].EveryDays, history.Care.Orders[1].Confirmed));
        Assert.Equal([IsoDayOfWeek.Monday, IsoDayOfWeek.Thursday], history.Care.Orders[2].Weekdays);
        Assert.Equal([new LocalDate(2027, 3, 11)], history.Care.Orders[3].Dates);
    }

    private static readonly string[] Beginnings =
        ["line PICC", "2027-03-03 ", "2027-03-03 dressing film, ", "order ", "policy ", "hold ", "outside ", "infusion ", "now ", "validated ", "exception "];

    /// <summary>Bad rows of any kind end in a message, never in an exception.</summary>
    [Fact]
    public void Nothing_that_can_be_typed_breaks_the_reading() => Gen.Select(Gen.Int[0, Beginnings.Length - 1], Gen.String[0, 30]).Sample(
        row => HistoryText.Read("line PICC, lumens A B\n" + Beginnings[row.Item1] + row.Item2, PolicyBook.Default, Zone, Now) is not null,
        iter: 3_000);

    private static LineHistory Good(string text)
    {
        HistoryReading reading = HistoryText.Read(text, PolicyBook.Default, Zone, Now);
        Assert.Empty(reading.Faults);
        return reading.History!;
    }
}
