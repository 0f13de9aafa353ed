using System.Collections.Immutable;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Answers;

/// <summary>One workable answer to an urgent need.</summary>
/// <param name="Plan">The whole plan after the change, accepted by the checker.</param>
/// <param name="Visit">The new visit.</param>
/// <param name="Moved">Visits whose start leaves the range the family was told.</param>
/// <param name="Replaced">Later visits of the same care that are no longer needed.</param>
/// <param name="DrivingDelta">Minutes of driving added on the day of the new visit.</param>
/// <param name="MeetsTarget">Whether the start is within the target.</param>
/// <param name="Disruption">Points of the disruption table.</param>
/// <param name="Freed">What the replaced visits give back, per nurse-day.</param>
public sealed record UrgentAnswer(
    WeekPlan Plan,
    PlannedVisit Visit,
    ImmutableArray<MovedVisit> Moved,
    ImmutableArray<PlannedVisit> Replaced,
    int DrivingDelta,
    bool MeetsTarget,
    int Disruption,
    ImmutableArray<FreedTime> Freed);

/// <summary>A visit that moves outside the range its family was told.</summary>
/// <param name="Before">As published.</param>
/// <param name="After">As it would be.</param>
/// <param name="Minutes">How much later (or, negative, earlier) it starts.</param>
public sealed record MovedVisit(PlannedVisit Before, PlannedVisit After, int Minutes);

/// <summary>Time a nurse gets back.</summary>
/// <param name="Nurse">Who.</param>
/// <param name="Day">Day index.</param>
/// <param name="VisitMinutes">Minutes of the visit and its charting.</param>
/// <param name="DrivingMinutes">Minutes of driving saved.</param>
public sealed record FreedTime(string Nurse, int Day, int VisitMinutes, int DrivingMinutes);

/// <summary>A nurse who cannot do it, and why.</summary>
/// <param name="Nurse">Who.</param>
/// <param name="Reason">Why not.</param>
public sealed record RuledOut(string Nurse, PlanningReason Reason);

/// <summary>The ranked, non-dominated answers and everybody who was ruled out.</summary>
/// <param name="Answers">At most three, best first.</param>
/// <param name="Dominated">Workable answers that another answer beats on every count; shown only on demand.</param>
/// <param name="RuledOut">Nurses with no workable answer.</param>
public sealed record UrgentAnswers(
    ImmutableArray<UrgentAnswer> Answers,
    ImmutableArray<UrgentAnswer> Dominated,
    ImmutableArray<RuledOut> RuledOut);
