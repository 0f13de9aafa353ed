using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Editing;

/// <summary>What a move would do to a plan.</summary>
/// <param name="Before">The visits that change or go, as they stand.</param>
/// <param name="After">The visits that change or come, as they would stand, by start.</param>
/// <param name="Moved">The visit in hand as it would stand; empty when it is taken out.</param>
/// <param name="Broken">What the checker would hold against the plan that it does not hold against it now.</param>
/// <param name="Score">Score of the whole plan then.</param>
/// <param name="DrivingMinutes">Driving added; negative when saved.</param>
/// <param name="OvertimeMinutes">Overtime added; negative when saved.</param>
/// <param name="LateTasks">Tasks more that are done late; negative when fewer.</param>
public sealed record HandChange(
    ImmutableArray<PlannedVisit> Before,
    ImmutableArray<PlannedVisit> After,
    PlannedVisit? Moved,
    ImmutableArray<Finding> Broken,
    PlanScore Score,
    int DrivingMinutes,
    int OvertimeMinutes,
    int LateTasks)
{
    /// <summary>Whether no rule forbids it.</summary>
    public bool IsAllowed => Broken.IsEmpty;
}

/// <summary>A place that works, and what it would do.</summary>
/// <param name="Place">Where.</param>
/// <param name="Change">What it would do.</param>
public sealed record WorkablePlace(DayPlace Place, HandChange Change);
