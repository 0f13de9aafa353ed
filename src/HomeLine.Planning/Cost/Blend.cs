namespace HomeLine.Planning.Cost;

/// <summary>
/// The tiers blended into one number of "minutes", used only to steer: which insertion to take and which step to accept. The best plan is
/// always chosen by the exact tier-by-tier comparison.
/// </summary>
internal static class Blend
{
    public const double Risk = 100;
    public const double Duty = 50;
    public const double People = 0.05;
    public const double UnusedLife = 0.01;

    /// <summary>
    /// Price of a critical point: high enough that the least lateness of critical care (one step at weight 1) outweighs all other care left out.
    /// </summary>
    public static double CriticalPrice(Problem.PlanningRules rules, long allOtherUnmet) =>
        Math.Max(1_000, 2 * Risk * allOtherUnmet / Math.Max(1, rules.CriticalStepPoints));

    public static double Of(Plans.PlanScore score, double criticalPrice) =>
        (score.Critical * criticalPrice) + (score.Risk * Risk) + (score.Duties * Duty) + score.Work
        + (score.People * People) + (score.UnusedLife * UnusedLife);
}
