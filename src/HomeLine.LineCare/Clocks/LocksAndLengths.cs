using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Clocks;

/// <summary>Lines that must not be used as usual: tip unconfirmed, grown outside, occluded, or not ours.</summary>
internal static class LocksAndLengths
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (!story.TipConfirmed)
            reckoning.Locks.Add(new LineLock(story.Line.Id, "The tip position is not confirmed: not for use."));
        if (story.UseLocked is { } locked)
            reckoning.Locks.Add(new LineLock(story.Line.Id, $"Locked on {Says.Short(locked.Performed?.Date ?? reckoning.DayOf(locked.RecordedAt))} until a licensed person releases it. {locked.Note}".TrimEnd()));
        foreach (var lumen in story.Lumens)
            if (lumen.Occluded)
                reckoning.Locks.Add(new LineLock(story.Line.Id, $"Lumen {lumen.Label} is occluded: not for use, do not force.", lumen.Label));
        if (story.Contradicted is { } word)
            reckoning.Ask(story.Line.Id, DecisionCodes.ContradictedDate,
                $"A dressing change told later{Says.By(word)} does not fit the date read off the dressing. The date read off stands until somebody decides.");
        if (story.Covering == DressingKind.AntisepticFilm
            && Materials.ChlorhexidineAllowed(reckoning.Care, reckoning.Policy, reckoning.Today) is { Allowed: false } caution)
            reckoning.Ask(story.Line.Id, DecisionCodes.Chlorhexidine, $"{caution.Reason} The dressing that is on contains it.");
        AddLength(reckoning, story);
    }

    /// <summary>Growth that reaches the step asks for a new measurement; growth beyond it locks the line until somebody licensed has decided.</summary>
    private static void AddLength(Reckoning reckoning, LineStory story)
    {
        var baseline = story.Baseline?.OutsideLengthCm ?? story.Line.OutsideLengthCm;
        if (baseline is not { } before || story.LastLength is not { OutsideLengthCm: { } now } reading || reading == story.Baseline) return;
        var growth = now - before;
        var text = $"Outside length {Says.Amount(now, "cm")} on {Says.Short(reading.Performed?.Date ?? reckoning.DayOf(reading.RecordedAt))}, {Says.Amount(before, "cm")} at insertion";
        var step = reckoning.Value(RuleIds.LengthStep);
        if (growth > step)
            reckoning.Locks.Add(new LineLock(story.Line.Id, $"{text}: the tip may have moved. No infusion until a licensed person has decided."));
        if (growth >= step)
            reckoning.Ask(story.Line.Id, DecisionCodes.LengthGrew, $"{text}: measure again and decide.");
        else if (-growth > reckoning.Value(RuleIds.LengthShortening))
            reckoning.Ask(story.Line.Id, DecisionCodes.LengthShrank, $"{text}: the line may have moved inward; decide about imaging.");
    }
}
