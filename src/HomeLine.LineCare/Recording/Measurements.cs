using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Recording;

/// <summary>Lengths and girths within what a line and an arm can measure; growth and shortening are told before they are saved.</summary>
internal static class Measurements
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.OutsideLengthCm is { } length)
        {
            var most = entering.Value(entry.Kind == LineEventKind.Removed ? RuleIds.RemovedLengthMost : RuleIds.OutsideLengthMost);
            if (length < 0 || length > most)
                entering.Refuse(RecordingCodes.LengthOutOfRange, $"A length of {Says.Amount(length, "cm")} cannot be: 0 to {Says.Amount(most, "cm")}.");
            else if (entry.Kind == LineEventKind.Removed) Removed(entering, length);
            else Growth(entering, length);
        }
        else if (entry.Kind == LineEventKind.Removed && entering.Line!.InsertedLengthCm is { } inserted)
        {
            entering.Ask(RecordingCodes.RemovedUnmeasured, $"How long is the removed catheter? {Says.Amount(inserted, "cm")} went in.");
        }

        Girth(entering);
    }

    private static void Removed(Entering entering, decimal length)
    {
        if (entering.Line!.InsertedLengthCm is { } inserted && length < inserted)
            entering.Ask(DecisionCodes.RemovedShorter,
                $"The removed catheter measures {Says.Amount(length, "cm")}, shorter than the {Says.Amount(inserted, "cm")} that went in. "
                + "A piece may remain. Measure again; if it is so, this is an emergency: call the emergency number now, then the prescriber.");
    }

    private static void Growth(Entering entering, decimal length)
    {
        if ((entering.Before.Baseline?.OutsideLengthCm ?? entering.Line!.OutsideLengthCm) is not { } before) return;
        var growth = length - before;
        if (growth >= entering.Value(RuleIds.LengthStep))
            entering.Tell(DecisionCodes.LengthGrew, $"{Says.Amount(growth, "cm")} longer outside than at insertion: the line is not used as usual until somebody licensed decides.");
        else if (-growth > entering.Value(RuleIds.LengthShortening))
            entering.Tell(DecisionCodes.LengthShrank, $"{Says.Amount(-growth, "cm")} shorter outside than at insertion: somebody licensed decides about imaging.");
    }

    private static void Girth(Entering entering)
    {
        if (entering.Entry.ArmGirthCm is not { } girth) return;
        var most = entering.Value(RuleIds.GirthMost);
        if (girth <= 0 || girth > most)
        {
            entering.Refuse(RecordingCodes.GirthOutOfRange, $"A girth of {Says.Amount(girth, "cm")} cannot be: above 0 to {Says.Amount(most, "cm")}.");
            return;
        }

        if (entering.Before.FirstGirth is { ArmGirthCm: { } first } && girth - first >= entering.Value(RuleIds.GirthRise))
            entering.Tell(DecisionCodes.GirthRose, $"The arm is {Says.Amount(girth - first, "cm")} wider than at the first measurement: somebody licensed decides now.");
    }
}
