using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>
/// Checks a changed plan by its changed part: everything the touched patients have, and the touched nurses' days, before and after. Every rule and every
/// tier of the score is a sum over patients and nurse-days, so what is not in the part cannot have changed. The checker itself judges; this only cuts out.
/// </summary>
internal sealed class PlanPart
{
    private readonly StandingTable _table;
    private readonly PlanScore _whole;
    private readonly WeekProblem _old, _now;
    private readonly ImmutableArray<PlannedVisit> _before;

    /// <param name="table">The published plan.</param>
    /// <param name="patients">Patients whose visits change.</param>
    /// <param name="visits">Published visits of the part.</param>
    /// <param name="newTasks">Care the problem does not know yet.</param>
    /// <param name="whole">Score of the published plan, without that care.</param>
    public PlanPart(StandingTable table, IReadOnlyCollection<int> patients, int[] visits, ImmutableArray<CareTask> newTasks, PlanScore whole)
    {
        _table = table;
        _whole = whole;
        _before = [.. visits.Select(v => table.Visits[v].Was)];
        WeekProblem problem = table.Problem;
        int[] people = [.. visits.Select(v => table.Visits[v].Patient).Concat(patients).Distinct().Order()];
        var tasks = _before.SelectMany(v => v.Tasks.IsDefault ? [] : v.Tasks).Concat(patients.SelectMany(p => table.TasksOf[p])).ToHashSet(StringComparer.Ordinal);
        _old = problem with
        {
            Patients = [.. people.Select(p => problem.Patients[p])],
            Tasks = [.. tasks.Where(table.Tasks.ContainsKey).Select(t => table.Tasks[t])],
            Published = table.Plan with { Visits = _before },
        };
        _now = newTasks.IsEmpty ? _old : _old with { Tasks = [.. _old.Tasks, .. newTasks] };
    }

    /// <summary>Findings the part has with other visits that it had not as published, and the score of the whole plan then.</summary>
    public (ImmutableArray<Finding> Findings, PlanScore Score) Compare(ImmutableArray<PlannedVisit> after)
    {
        CheckReport was = Checker.Check(_old, Plan(_old, _before)), then = Checker.Check(_now, Plan(_now, after));
        if (then.Findings.IsEmpty) return ([], Sum(then.Score, was.Score));
        CheckReport asked = ReferenceEquals(_old, _now) ? was : Checker.Check(_now, Plan(_now, _before));
        var known = asked.Findings.Select(f => (f.Rule, f.Visit, f.Reason.Code)).ToHashSet();
        return ([.. then.Findings.Where(f => !known.Contains((f.Rule, f.Visit, f.Reason.Code)))], Sum(then.Score, was.Score));
    }

    private WeekPlan Plan(WeekProblem part, ImmutableArray<PlannedVisit> visits)
    {
        if (_table.Plan.Unmet.IsDefaultOrEmpty) return new WeekPlan(visits, [], default);
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        var tasks = part.Tasks.Select(t => t.Id).Where(t => !done.Contains(t)).ToHashSet(StringComparer.Ordinal);
        return new WeekPlan(visits, [.. _table.Plan.Unmet.Where(u => tasks.Contains(u.Task))], default);
    }

    private PlanScore Sum(PlanScore then, PlanScore was) => new(
        _whole.Critical + then.Critical - was.Critical,
        _whole.Risk + then.Risk - was.Risk,
        _whole.Duties + then.Duties - was.Duties,
        _whole.Work + then.Work - was.Work,
        _whole.People + then.People - was.People,
        _whole.UnusedLife + then.UnusedLife - was.UnusedLife);
}
