using System.Collections.Immutable;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;

namespace HomeLine.Agency.OwnWeek;

/// <summary>One nurse's week planned by herself: what of the draft it takes the place of. Pure.</summary>
/// <param name="Version">The published version it was planned on.</param>
/// <param name="Revision">The draft's revision it was planned on; 0 for none.</param>
/// <param name="Before">Her visits as they stood and are replaced.</param>
/// <param name="After">Her visits as planned.</param>
/// <param name="Unmet">What is left undone of the patients she plans, with reasons seen over the whole agency.</param>
/// <param name="Broken">What the independent checker holds against it; then nothing is kept.</param>
internal sealed record OwnWeekPlan(
    int Version, int Revision, ImmutableArray<WeekVisit> Before, ImmutableArray<WeekVisit> After, ImmutableArray<UnmetNeed> Unmet, PlanningReason? Broken)
{
    public static OwnWeekPlan Of(WorkingWeek week, string nurse, PlanOptions options, CancellationToken cancel)
    {
        OwnWeekDemand demand = OwnWeekDemand.Of(week, nurse);
        WeekPlan plan = Planner.Plan(demand.Problem, options, null, cancel);
        CheckReport check = Checker.Check(demand.Problem, plan);
        var staying = demand.Staying.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<PlannedVisit> own = [.. plan.Visits.Where(v => !staying.Contains(v.Id))];
        var replaced = week.Hand.Visits.Where(v => !staying.Contains(v.Id)).Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        var names = week.Week.Visits.Select(v => v.Id).Where(id => !replaced.Contains(id)).ToHashSet(StringComparer.Ordinal);
        return new OwnWeekPlan(
            week.Published?.Version ?? 0,
            week.Revision,
            [.. week.Week.Visits.Where(v => replaced.Contains(v.Id))],
            [.. own.Select(v => week.Kept(v) with { Id = NewName(v.Id, names) })],
            UnmetOf(week, demand, plan),
            check.Accepted ? null : check.Findings[0].Reason);
    }

    /// <summary>Reasons and ways out as they are for the whole agency: somebody else may have the skill or the time she lacks.</summary>
    private static ImmutableArray<UnmetNeed> UnmetOf(WorkingWeek week, OwnWeekDemand demand, WeekPlan plan)
    {
        var done = plan.Visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        if (demand.Problem.Tasks.All(t => done.Contains(t.Id))) return [];
        ImmutableArray<UnmetTask> unmet = Planner.WhyUnmet(week.Hand.Problem with { FrozenVisits = demand.Problem.FrozenVisits, Published = demand.Problem.Published }, plan.Visits);
        return
        [
            .. unmet
                .Where(u => week.Needs.Demand.Needs.TryGetValue(u.Task, out CareNeed? need) && demand.Patients.Contains(need.Patient.Value))
                .Select(u => LeftUnmet(u, week.Needs.Demand.Needs[u.Task])),
        ];
    }

    private static UnmetNeed LeftUnmet(UnmetTask unmet, CareNeed need) =>
        new(need.Patient, need.Task.Label, unmet.Reasons, unmet.Relaxations) { LastDay = need.Windows[0].LastDay };

    private static string NewName(string id, HashSet<string> names)
    {
        string free = id;
        for (int n = 2; !names.Add(free); n++) free = $"{id}-{n}";
        return free;
    }
}
