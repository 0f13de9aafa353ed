using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>A second report of the same seal within the policy's hours is the same finding: both callers stay in the record, and the deadline
/// runs from the first.</summary>
internal static class Seals
{
    public static void Check(Entering entering)
    {
        if (entering.Entry.Kind != LineEventKind.SealReported) return;
        if (entering.Entry.Seal == SealFinding.None)
            entering.Ask(RecordingCodes.SealFindingMissing, "What was found? Until it is known it counts as a lifted edge.");
        var within = Duration.FromMinutes((double)(entering.Value(RuleIds.SealMerge) * 60));
        foreach (var earlier in entering.Before.BrokenSeals)
        {
            var reported = earlier.Performed?.At ?? earlier.RecordedAt;
            if (entering.At - reported > within) continue;
            entering.Tell(RecordingCodes.SealReportedAlready,
                $"Reported already {Says.Moment(reported, entering.Care.Zone)}{Caller(earlier)}: one finding, both callers are kept, the earlier deadline stands.");
            return;
        }
    }

    private static string Caller(LineEvent entry) => entry.PerformerName.Length > 0 ? $" by {entry.PerformerName}" : "";
}
