using CsCheck;
using HomeLine.LineCare.Calendar;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Tests.Naive;
using HomeLine.LineCare.Travel;
using NodaTime;

namespace HomeLine.LineCare.Tests.Calendar;

/// <summary>Over random histories: the calendar begins with what is due now, and every entry gets its replies.</summary>
public sealed class AnyHistory
{
    [Fact]
    public void The_calendar_of_any_history_begins_with_what_is_due_now_and_comes_to_an_end() =>
        Histories.Any.Sample(
            history =>
            {
                var calendar = LineCalendar.For(history.Care, history.Book, history.Now, 4);
                var due = WhatIsDue.For(history.Care, history.Book, history.Now, 28).Windows;
                foreach (var item in calendar.Items)
                {
                    var now = due.Where(w => (w.Item, w.Line, w.Lumen, w.Order) == (item.Item, item.Line, item.Lumen, item.Order)).ToList();
                    if (now.Count > 0 && now[0].OpensOn <= calendar.Through) Assert.False(item.Ahead[0].Foreseen);
                    Assert.All(item.Ahead, ahead => Assert.True(ahead.AssumedOn is null || ahead.AssumedOn <= calendar.Through));
                    Assert.True(item.Ahead.Length <= 28 + 3, $"{item.Item} {item.Ahead.Length}");
                }
            },
            iter: 400);

    [Fact]
    public void Any_entry_after_any_history_gets_its_replies_and_never_a_crash() =>
        Gen.Select(Histories.Any, Histories.Any).Sample(
            (history, other) =>
            {
                var lines = history.Care.Lines;
                var entries = other.Care.Events.Select((entry, i) => entry with
                {
                    Id = new EventId($"new{i}"),
                    Line = entry.Line is null || lines.IsEmpty ? entry.Line : lines[i % lines.Length].Id,
                });
                foreach (var entry in entries.Take(6))
                {
                    var replies = BeforeRecording.Replies(history.Care, [entry], history.Book, history.Now);
                    Assert.Equal(replies.OrderBy(r => r.Weight), replies);
                    if (entry.Performed?.At > history.Now) Assert.Contains(replies, r => r is { Code: RecordingCodes.InTheFuture, Weight: ReplyWeight.Refuse });
                    Assert.All(replies, r => Assert.EndsWith(".", r.Sentence.Replace('?', '.'), StringComparison.Ordinal));
                }
            },
            iter: 400);

    /// <summary>The clerk in the tests counts on the same wall calendar, and knows nothing of how a journey is put together.</summary>
    [Fact]
    public void Engine_and_clerk_agree_for_a_patient_who_travels() =>
        Gen.Select(Histories.Any, Gen.Int[-20, 20], Gen.Int[2, 30], Gen.OneOf("America/Chicago", "Europe/London", "America/Halifax").Select(id => DateTimeZoneProviders.Tzdb[id])).Sample(
            (history, away, days, place) =>
            {
                var today = history.Now.InZone(history.Care.Zone).Date;
                if (ChangesNear(history.Care.Zone, today, away, days) || ChangesNear(place, today, away, days)) return;
                var care = history.Care with { Zone = TravellingZone.Of(history.Care.Zone, [new Stay(today.PlusDays(away), today.PlusDays(away + days), place, "")]) };
                var difference = Findings.Of(WhatIsDue.For(care, history.Book, history.Now)).Against(Desk.Answer(care, history.Book, history.Now));
                Assert.True(difference.Length == 0, difference);
            },
            iter: 1_000);

    /// <summary>A change of the clocks within two days of leaving or coming home.</summary>
    private static bool ChangesNear(DateTimeZone zone, LocalDate today, int away, int days) =>
        new[] { away, away + days + 1 }.Any(offset =>
        {
            var at = zone.AtStartOfDay(today.PlusDays(offset)).ToInstant();
            return zone.GetUtcOffset(at - Duration.FromDays(2)) != zone.GetUtcOffset(at + Duration.FromDays(2));
        });
}
