using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>What would be refused, asked or told if entries were recorded. Nothing is stored; the same entries always bring the same replies.</summary>
public static class BeforeRecording
{
    /// <summary>Every reply, refusals first, in the order of the entries. Empty when nothing stands against saving them.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="entries">The entries about to be saved together, corrections among them.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">The instant of saving.</param>
    public static ImmutableArray<RecordingReply> Replies(
        PatientCare care, ImmutableArray<LineEvent> entries, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        var replies = ImmutableArray.CreateBuilder<RecordingReply>();
        foreach (var entry in entries)
        {
            var entering = new Entering(entry, care, entries, policy, now);
            Moments.Check(entering);
            HospitalStays.Check(entering);
            Corrections.Check(entering);
            if (!WhichLine.Check(entering)) { replies.AddRange(entering.Replies); continue; }
            Dressings.Check(entering);
            Connectors.Check(entering);
            Measurements.Check(entering);
            Seals.Check(entering);
            UseOfTheLine.Check(entering);
            Permission.Check(entering);
            replies.AddRange(entering.Replies);
        }

        return [.. replies.OrderBy(reply => reply.Weight)];
    }
}
