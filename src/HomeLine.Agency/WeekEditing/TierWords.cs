using System.Collections.Immutable;
using HomeLine.Planning.Plans;

namespace HomeLine.Agency.WeekEditing;

/// <summary>One tier of two scores beside each other.</summary>
/// <param name="Tier">Its name.</param>
/// <param name="Counts">What it counts.</param>
/// <param name="Before">Points of the first plan.</param>
/// <param name="After">Points of the second plan.</param>
public sealed record TierChange(string Tier, string Counts, long Before, long After)
{
    /// <summary>Positive when the second plan is worse in this tier.</summary>
    public long More => After - Before;

    /// <summary>For example <c>Work: 14 more (visits, driving, waiting and overtime, in minutes)</c>.</summary>
    public string Sentence => More == 0
        ? $"{Tier}: the same."
        : $"{Tier}: {Math.Abs(More)} {(More > 0 ? "more" : "less")} ({Counts}).";
}

/// <summary>Two scores compared tier by tier, in the order in which they decide.</summary>
public static class TierWords
{
    public static ImmutableArray<TierChange> Compare(PlanScore before, PlanScore after) =>
    [
        new("Critical care", "points of critical care late or unmet", before.Critical, after.Critical),
        new("Other care", "points of care late or unmet", before.Risk, after.Risk),
        new("Duties", "points of duties not kept", before.Duties, after.Duties),
        new("Work", "visits, driving, waiting and overtime, in minutes", before.Work, after.Work),
        new("People", "points of unknown faces, wishes and uneven days", before.People, after.People),
        new("Early care", "days of care given away", before.UnusedLife, after.UnusedLife),
    ];
}
