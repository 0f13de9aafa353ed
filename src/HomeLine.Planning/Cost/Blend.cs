namespace HomeLine.Planning.Cost;

/// <summary>
/// The tiers blended into one number of "minutes", used only to steer: which insertion to take and which step to accept. The best plan is
/// always chosen by the exact tier-by-tier comparison.
/// </summary>
internal static class Blend
{
    public const double Critical = 1_000;
    public const double Risk = 100;
    public const double Duty = 50;
    public const double People = 0.05;
    public const double UnusedLife = 0.01;

    public static double Of(Plans.PlanScore score) =>
        (score.Critical * Critical) + (score.Risk * Risk) + (score.Duties * Duty) + score.Work
        + (score.People * People) + (score.UnusedLife * UnusedLife);
}
