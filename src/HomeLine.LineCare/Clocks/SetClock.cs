using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Clocks;

/// <summary>
/// The administration set of each infusion, in elapsed hours. A set that belongs to a container ends with it: once it was taken down,
/// or when a caregiver hangs each container with its own set and nothing is recorded, there is no running clock.
/// </summary>
internal static class SetClock
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        foreach (var infusion in reckoning.Care.Infusions)
        {
            if (infusion.Line != story.Line.Id || story.Lumen(infusion.Lumen) is not { SetTakenDown: false } lumen) continue;
            var owner = OwnerOf(reckoning, infusion);
            if (infusion.Kind != InfusionKind.Continuous && !ContainerRuns(infusion, lumen, owner)) continue;
            reckoning.Windows.Add(new WindowDraft(
                CareItem.Set, story.Line.Id, infusion.Lumen, lumen.Set, RuleOf(infusion.Kind),
                lumen.Set.IsDated ? "Set for {0} changed" : "Set for {0}")
            { About = infusion.Drug, Owner = owner }.Window(reckoning));
        }
    }

    private static ClockRule RuleOf(InfusionKind kind) => kind switch
    {
        InfusionKind.Continuous => ClockRule.SetContinuous,
        InfusionKind.Intermittent => ClockRule.SetIntermittent,
        InfusionKind.ParenteralNutrition => ClockRule.SetNutrition,
        InfusionKind.Lipid => ClockRule.SetLipid,
        InfusionKind.Blood => ClockRule.SetBlood,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such infusion."),
    };

    /// <summary>Whether a per-container or per-dose set is hanging: it was changed, and no dose has ended since. With no record the nurse
    /// who owns nutrition, lipid or blood has to look; a set for a single nurse-given dose belongs to that visit and has no clock.</summary>
    private static bool ContainerRuns(Infusion infusion, LumenStory lumen, PerformerKind owner)
    {
        if (!lumen.Set.IsDated)
            return owner == PerformerKind.Nurse && infusion is not { Kind: InfusionKind.Intermittent, SetChangedBy: PerformerKind.Nurse };
        if (infusion.Kind == InfusionKind.Intermittent) return infusion.SetChangedBy != PerformerKind.Nurse;
        return lumen.DoseEnded is not { Performed: { } ended } || Before(ended, lumen.Set.Moment);
    }

    private static bool Before(CareMoment first, CareMoment second) => first is { At: { } a } && second is { At: { } b }
        ? a <= b
        : first.Date < second.Date;

    /// <summary>The infusion says who changes its set; a caregiver keeps it only while somebody is validated for it.</summary>
    private static PerformerKind OwnerOf(Reckoning reckoning, Infusion infusion)
    {
        if (infusion.SetChangedBy != PerformerKind.Caregiver) return infusion.SetChangedBy;
        if (Owners.IsValidated(reckoning.Care.Caregivers, CareItem.Set, infusion.Line, reckoning.Today)) return PerformerKind.Caregiver;
        reckoning.Ask(infusion.Line, DecisionCodes.CaregiverNotValidated, infusion.Drug, null,
            $"Nobody is validated to change the set for {infusion.Drug}: it falls to the nurse until somebody is.");
        return PerformerKind.Nurse;
    }
}
