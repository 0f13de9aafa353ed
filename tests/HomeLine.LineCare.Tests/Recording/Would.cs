using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Recording;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Recording;

/// <summary>What would be said if something were recorded on a day at an hour, New York time.</summary>
internal static class Would
{
    public static LineEvent Entry(LineEventKind kind, CareMoment? performed, Func<LineEvent, LineEvent>? but = null)
    {
        var entry = new LineEvent
        {
            Id = new EventId("new"),
            Patient = Given.Patient,
            Line = First,
            Kind = kind,
            Performed = performed,
            RecordedAt = performed?.At ?? At(Mar(8), 9),
        };
        return but is null ? entry : but(entry);
    }

    public static LineEvent Entry(LineEventKind kind, LocalDate day, int hour, Func<LineEvent, LineEvent>? but = null) =>
        Entry(kind, CareMoment.Exactly(At(day, hour), Zone), but);

    public static ImmutableArray<RecordingReply> Replies(this Given given, params ImmutableArray<LineEvent> entries) =>
        BeforeRecording.Replies(given.Care, entries, given.Policy, At(Mar(8), 12));

    public static RecordingReply Reply(this Given given, LineEvent entry, string code) =>
        Assert.Single(given.Replies(entry), reply => reply.Code == code);

    public static void IsQuiet(this Given given, params ImmutableArray<LineEvent> entries) => Assert.Empty(given.Replies(entries));
}
