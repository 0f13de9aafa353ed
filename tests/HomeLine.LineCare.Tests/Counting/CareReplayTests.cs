using System.Collections.Immutable;
using HomeLine.LineCare.Counting;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Counting;

/// <summary>Punctuality recounted from the ledger. The lines are invented; a film dressing lasts seven days by the default policy.</summary>
public sealed class CareReplayTests
{
    private static Given Dressed(LocalDate day, Given? given = null, Func<LineEvent, LineEvent>? but = null) => (given ?? Picc())
        .Event(LineEventKind.DressingChanged, day, but: e => (but ?? (x => x))(e with { Dressing = DressingKind.Film, SecurementChanged = true }));

    private static ImmutableArray<TimedCare> Count(Given given, LocalDate from, LocalDate through, LocalDate? now = null) =>
        CareReplay.Of(given.Care, from, through, given.Policy, At(now ?? new LocalDate(2027, 4, 30), 12));

    private static TimedCare Dressing(ImmutableArray<TimedCare> found) => Assert.Single(found, care => care.Item == CareItem.Dressing);

    [Theory]
    [InlineData(8, CareTiming.InWindow)]
    [InlineData(9, CareTiming.Late)]
    [InlineData(2, CareTiming.Early)]
    public void A_dressing_is_early_in_time_or_late(int day, CareTiming expected)
    {
        var found = Dressing(Count(Dressed(Mar(day), Dressed(Mar(1))), Mar(2), Mar(day)));

        Assert.Equal(expected, found.Timing);
        Assert.Equal(expected == CareTiming.Late, found.IsLate);
    }

    [Fact]
    public void What_nobody_has_done_stands_late_at_the_end_of_the_span()
    {
        var given = Dressed(Mar(1));

        Assert.Empty(Count(given, Mar(2), Mar(7)).Where(care => care.Item == CareItem.Dressing));
        Assert.Equal(CareTiming.StillOpen, Dressing(Count(given, Mar(2), Mar(12))).Timing);
    }

    [Fact]
    public void A_refusal_and_a_missed_visit_are_the_reason_and_silence_is_told_as_such()
    {
        var late = Dressed(Mar(11), Dressed(Mar(1)));

        Assert.Equal(LateBecause.NotRecorded, Dressing(Count(late, Mar(2), Mar(11))).Because);
        Assert.Equal(LateBecause.Refused, Dressing(Count(late.Event(LineEventKind.Refused, Mar(8)), Mar(2), Mar(11))).Because);
        Assert.Equal(LateBecause.VisitMissed, Dressing(Count(late.Event(LineEventKind.Missed, Mar(8)), Mar(2), Mar(11))).Because);
    }

    [Fact]
    public void A_stay_in_hospital_is_the_reason_and_what_is_done_after_it_has_no_date_to_be_late_against()
    {
        var away = Dressed(Mar(1)).Event(LineEventKind.Refused, Mar(6)).Event(LineEventKind.AdmittedToHospital, Mar(7), but: e => e with { Line = null });
        var home = Dressed(Mar(11), away.Event(LineEventKind.ReturnedHome, Mar(10), but: e => e with { Line = null }));

        var open = Dressing(Count(away, Mar(2), Mar(11)));

        Assert.Equal((CareTiming.StillOpen, LateBecause.Away), (open.Timing, open.Because));
        Assert.Equal(CareTiming.DateWasUnknown, Dressing(Count(home, Mar(2), Mar(11))).Timing);
    }

    [Fact]
    public void A_broken_seal_that_waited_too_long_is_late_although_the_week_was_not_over()
    {
        var given = Dressed(Mar(5), Dressed(Mar(1)).Event(LineEventKind.SealReported, Mar(3), but: e => e with { Seal = SealFinding.WetThrough }));

        var found = Dressing(Count(given, Mar(2), Mar(6)));

        Assert.Equal((CareTiming.Late, LateBecause.CutShort), (found.Timing, found.Because));
    }

    [Fact]
    public void A_corrected_entry_counts_as_corrected()
    {
        var given = Dressed(Mar(9), Dressed(Mar(1)));
        given = Dressed(Mar(8), given, e => e with { Id = new EventId("corrected"), Voids = new EventId("E2") });

        Assert.Equal(CareTiming.InWindow, Dressing(Count(given, Mar(2), Mar(9))).Timing);
    }

    [Fact]
    public void Two_spans_side_by_side_find_the_care_that_one_span_finds()
    {
        var given = Dressed(Mar(24), Dressed(Mar(15), Dressed(Mar(8), Dressed(Mar(1)))));

        var whole = Count(given, Mar(2), Mar(24)).Where(care => care.DoneAt is not null);
        var parts = Count(given, Mar(2), Mar(12)).Concat(Count(given, Mar(13), Mar(24))).Where(care => care.DoneAt is not null);

        Assert.Equal(whole.Select(care => (care.Item, care.DoneAt, care.Timing)), parts.Select(care => (care.Item, care.DoneAt, care.Timing)));
    }

    [Fact]
    public void Nothing_is_counted_before_it_has_happened() => Assert.Empty(Count(Dressed(Mar(1)), Mar(20), Mar(31), now: Mar(10)));
}
