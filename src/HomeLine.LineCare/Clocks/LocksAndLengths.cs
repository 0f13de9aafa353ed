using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Clocks;

/// <summary>Lines that must not be used as usual: tip unconfirmed, grown outside, occluded, or not ours.</summary>
internal static class LocksAndLengths
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (!story.TipConfirmed)
            reckoning.Locks.Add(new LineLock(story.Line.Id, "The tip position is not confirmed: not for use.")
            {
                Code = DecisionCodes.TipUnconfirmed,
                Since = story.Inserted is { } inserted ? reckoning.DayOf(inserted) : story.Line.InsertedOn,
            });
        if (story.UseLocked is { } locked)
            reckoning.Locks.Add(new LineLock(story.Line.Id, $"Locked on {Says.Short(reckoning.DayOf(locked))} until a licensed person releases it. {locked.Note}".TrimEnd())
            {
                Code = DecisionCodes.UseLocked,
                About = locked.Id.Value,
                Since = reckoning.DayOf(locked),
            });
        foreach (var lumen in story.Lumens)
            if (lumen.Occluded)
                reckoning.Locks.Add(new LineLock(story.Line.Id, $"Lumen {lumen.Label} is occluded: not for use, do not force.", lumen.Label)
                {
                    Code = DecisionCodes.LumenOccluded,
                    About = lumen.OccludedBy?.Id.Value ?? "",
                    Since = lumen.OccludedBy is { } found ? reckoning.DayOf(found) : null,
                });
        if (story.Contradicted is { } word)
            reckoning.Ask(story.Line.Id, DecisionCodes.ContradictedDate, word,
                $"A dressing change told later{Says.By(word)} does not fit the date read off the dressing. The date read off stands until somebody decides.");
        if (story.Covering == DressingKind.AntisepticFilm
            && Materials.ChlorhexidineAllowed(reckoning.Care, reckoning.Policy, reckoning.Today) is { Allowed: false } caution
            && story.Dressing.By is { } change)
            reckoning.Ask(story.Line.Id, DecisionCodes.Chlorhexidine, change, $"{caution.Reason} The dressing that is on contains it.");
        AddLength(reckoning, story);
    }

    /// <summary>Growth that reaches the step asks for a new measurement; growth beyond it locks the line until somebody licensed has decided.
    /// A release accepts the reading it was made on: from then on growth counts from there.</summary>
    private static void AddLength(Reckoning reckoning, LineStory story)
    {
        var step = reckoning.Numbers.LengthStep;
        if (story.Growth is not { } growth || (growth < step && -growth <= reckoning.Numbers.LengthShortening)) return;
        var reading = story.LastLength!;
        var now = reading.OutsideLengthCm!.Value;
        var from = story.AcceptedLength is { } accepted ? $"accepted on {Says.Short(reckoning.DayOf(accepted))}" : "at insertion";
        var text = $"Outside length {Says.Amount(now, "cm")} on {Says.Short(reckoning.DayOf(reading))}, {Says.Amount(now - growth, "cm")} {from}";
        if (growth > step)
            reckoning.Locks.Add(new LineLock(story.Line.Id, $"{text}: the tip may have moved. No infusion until a licensed person has decided.")
            {
                Code = DecisionCodes.LengthGrew,
                About = reading.Id.Value,
                Since = reckoning.DayOf(reading),
            });
        if (growth >= step)
            reckoning.Ask(story.Line.Id, DecisionCodes.LengthGrew, reading, $"{text}: measure again and decide.");
        else
            reckoning.Ask(story.Line.Id, DecisionCodes.LengthShrank, reading, $"{text}: the line may have moved inward; decide about imaging.");
    }
}
