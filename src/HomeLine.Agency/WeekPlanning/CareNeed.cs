using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// One thing a nurse must do for a patient within the horizon: the planner's task with the windows it comes from.
/// </summary>
/// <param name="Key">Names the need (patient, item, line, lumens, order); the same from plan to plan.</param>
/// <param name="Task">As the planner sees it; its identifier is the key with the occurrence's number.</param>
/// <param name="Patient">Whose.</param>
/// <param name="Item">The leading item.</param>
/// <param name="Windows">The windows it answers; for later occurrences those of the first.</param>
public sealed record CareNeed(string Key, CareTask Task, PatientId Patient, CareItem Item, ImmutableArray<DueWindow> Windows)
{
    /// <summary>The visit care entry this need leaves in a stored week.</summary>
    public VisitCare AsVisitCare() => new(Key, Task.Label);
}
