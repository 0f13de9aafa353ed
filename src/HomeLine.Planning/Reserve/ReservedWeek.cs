using System.Collections.Immutable;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Reserve;

/// <summary>A plan that keeps free time, and what that costs.</summary>
/// <param name="Plan">The plan; its score is the checker's, and knows nothing of a reserve.</param>
/// <param name="Days">Free slots of each day of the horizon.</param>
/// <param name="WorkWithout">Work of the plan made without a reserve, minutes.</param>
/// <param name="MissingWithout">Slots missing in that plan.</param>
public sealed record ReservedWeek(WeekPlan Plan, ImmutableArray<DaySlots> Days, long WorkWithout, int MissingWithout)
{
    /// <summary>Slots that could not be had.</summary>
    public int Missing => Days.Sum(d => d.Missing);

    /// <summary>What the reserve costs, minutes of the work tier; below 0 when a second search came upon less work.</summary>
    public long WorkMinutes => Plan.Score.Work - WorkWithout;
}
