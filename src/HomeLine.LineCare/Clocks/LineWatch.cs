using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Clocks;

/// <summary>What is watched on a line and asked about, without a clock: the girth of the arm over its first measurement, and how long a midline
/// has been in.</summary>
internal static class LineWatch
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        AddGirth(reckoning, story);
        if (story.Line.Kind == LineKind.Midline) AddDwell(reckoning, story);
    }

    /// <summary>The baseline is the first measurement; later ones are made on symptoms only (open vascular-access policy on catheter thrombosis).</summary>
    private static void AddGirth(Reckoning reckoning, LineStory story)
    {
        if (story.FirstGirth is not { ArmGirthCm: { } before } || story.LastGirth is not { ArmGirthCm: { } now } reading) return;
        if (now - before < reckoning.Value(RuleIds.GirthRise)) return;
        reckoning.Ask(story.Line.Id, DecisionCodes.GirthRose, reading,
            $"Arm girth {Says.Amount(now, "cm")} on {Says.Short(reckoning.DayOf(reading))}, {Says.Amount(before, "cm")} at the first measurement: decide now.");
    }

    private static void AddDwell(Reckoning reckoning, LineStory story)
    {
        if ((story.Inserted?.Performed?.Date ?? story.Line.InsertedOn) is not { } placed) return;
        var days = (int)reckoning.Value(RuleIds.MidlineDwell);
        var since = placed.PlusDays(days);
        if (reckoning.Today < since) return;
        reckoning.Ask(story.Line.Id, DecisionCodes.MidlineDwell, "", since,
            $"The midline was placed {Says.Short(placed)}, {days} days ago or more: is it still the right line?");
    }
}
