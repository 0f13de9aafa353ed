using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Explaining;

/// <summary>The first tier in which two plans differ, in words.</summary>
internal static class WhyWords
{
    private static readonly (string Code, string Amount, Func<PlanScore, long> Of)[] Tiers =
    [
        (ReasonCode.WhyCritical, "points of critical care late or unmet", s => s.Critical),
        (ReasonCode.WhyRisk, "points of care late or unmet", s => s.Risk),
        (ReasonCode.WhyDuties, "points of duties missed", s => s.Duties),
        (ReasonCode.WhyWork, "minutes of work", s => s.Work),
        (ReasonCode.WhyPeople, "points of familiar faces, wishes and even load", s => s.People),
        (ReasonCode.WhyLife, "days of care given away", s => s.UnusedLife),
    ];

    public static PlanningReason Say(PlanScore here, PlanScore? other, string chosen, string place, string what)
    {
        if (other is not { } there)
            return new PlanningReason(ReasonCode.WhyOnly, $"{chosen}: no other {what} can do all of it.", "Change hours, skills or windows to have a choice.");
        foreach ((string code, string amount, Func<PlanScore, long> of) in Tiers)
        {
            long more = of(there) - of(here);
            if (more > 0) return new PlanningReason(code, $"{chosen}: {place} would cost {more} {amount} more.", "Move it if that is worth it.");
            if (more < 0)
                return new PlanningReason(ReasonCode.WhyNotBest, $"{place} would save {-more} {amount}, all else being as it is.", "Move it, or keep it for a reason the score does not know.");
        }

        return new PlanningReason(ReasonCode.WhyTie, $"{chosen}: {place} would do as well.", "Choose freely.");
    }
}
