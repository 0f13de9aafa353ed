using System.Collections.Immutable;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Mending;

/// <summary>A published plan repaired, and everybody the repair concerns.</summary>
/// <param name="Plan">The repaired plan; its unmet list names reasons and the cheapest relaxations.</param>
/// <param name="Score">How good it is as a same-day plan.</param>
/// <param name="Broken">Visits that could not stay as they were, the one that can wait least first.</param>
/// <param name="Moved">Visits with another nurse, on another day, or out of the range that was promised.</param>
/// <param name="Calls">Families to tell: those to whom nobody comes first, then in the order in which they can wait least.</param>
/// <param name="Nurses">Nurses whose days change.</param>
/// <param name="Findings">Rules the repaired plan breaks that the published one did not; for example a break that an overrun has eaten. Mostly empty.</param>
public sealed record MendedWeek(
    WeekPlan Plan,
    SameDayScore Score,
    ImmutableArray<BrokenVisit> Broken,
    ImmutableArray<MovedVisit> Moved,
    ImmutableArray<FamilyCall> Calls,
    ImmutableArray<string> Nurses,
    ImmutableArray<Finding> Findings);

/// <summary>A visit that cannot stay as it was.</summary>
/// <param name="Visit">As published.</param>
/// <param name="Reason">Why.</param>
public sealed record BrokenVisit(PlannedVisit Visit, PlanningReason Reason);

/// <summary>A family to tell.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="Before">As published.</param>
/// <param name="After">As it will be; empty when nobody comes.</param>
/// <param name="Reason">What to tell.</param>
public sealed record FamilyCall(string Patient, PlannedVisit Before, PlannedVisit? After, PlanningReason Reason);

/// <summary>The score of a same-day plan, compared tier by tier: disruption comes before work. Lower is better; never a weighted sum.</summary>
public readonly record struct SameDayScore(long Critical, long Risk, long Duties, long Disruption, long Work, long People, long UnusedLife)
    : IComparable<SameDayScore>
{
    /// <inheritdoc/>
    public int CompareTo(SameDayScore other) =>
        (Critical, Risk, Duties, Disruption, Work, People, UnusedLife)
            .CompareTo((other.Critical, other.Risk, other.Duties, other.Disruption, other.Work, other.People, other.UnusedLife));

    /// <summary>Whether <paramref name="left"/> is better.</summary>
    public static bool operator <(SameDayScore left, SameDayScore right) => left.CompareTo(right) < 0;

    /// <summary>Whether <paramref name="left"/> is worse.</summary>
    public static bool operator >(SameDayScore left, SameDayScore right) => left.CompareTo(right) > 0;

    /// <summary>Whether <paramref name="left"/> is at least as good.</summary>
    public static bool operator <=(SameDayScore left, SameDayScore right) => left.CompareTo(right) <= 0;

    /// <summary>Whether <paramref name="left"/> is no better.</summary>
    public static bool operator >=(SameDayScore left, SameDayScore right) => left.CompareTo(right) >= 0;
}
