using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Recording;

/// <summary>A correction voids one entry that is there and was not voided before; a weaker word about the same day as a stronger one asks.</summary>
internal static class Corrections
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.Voids is { } mistaken)
        {
            var found = entering.Care.Events.FirstOrDefault(other => other.Id == mistaken);
            if (found is null) entering.Refuse(RecordingCodes.VoidedEntryUnknown, $"There is no entry {mistaken} to correct.");
            else if (entering.Care.Events.Any(other => other.Voids == mistaken))
                entering.Refuse(RecordingCodes.VoidedAlready, $"Entry {mistaken} was corrected before: correct the entry that replaced it.");
            else if (entry.Certainty < found.Certainty) AskAboutWeaker(entering, found);
            return;
        }

        if (entering.Line is null || entry.Performed is null) return;
        if (ResetTable.Of(entry.Kind, CareItem.Dressing) is ResetEffect.Resets && entering.Before.Dressing is { IsDated: true, By: { } current }
            && current.Certainty > entry.Certainty && current.Performed!.Value.Date == entry.Performed.Value.Date)
            AskAboutWeaker(entering, current);
    }

    private static void AskAboutWeaker(Entering entering, LineEvent stronger) =>
        entering.Ask(RecordingCodes.WeakerWord,
            $"The entry of {(stronger.Performed is { } moment ? Says.When(moment, entering.Care.Zone) : "unknown date")} rests on a stronger word. Which one is right?");
}
