using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Editing;

/// <summary>
/// Judges a changed plan by its changed part: everything the touched patients have, and the touched nurses' days with the days beside them (with a cap on the week, their week), before
/// and after. Every rule and every tier of the score is a sum over patients and nurse-days, so what is not in the part cannot have changed. The checker itself judges.
/// </summary>
internal sealed class HandPart(HandTable table, PlanScore whole)
{
    public HandChange Judge(Laid laid)
    {
        ImmutableArray<PlannedVisit> before = Part(laid);
        var gone = laid.Before.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<PlannedVisit> after = [.. before.Where(v => !gone.Contains(v.Id)), .. laid.After];
        WeekProblem problem = ProblemOf(laid, before);
        CheckReport was = Checker.Check(problem, Plan(problem, before)), then = Checker.Check(problem, Plan(problem, after));
        return new HandChange(
            laid.Before,
            laid.After,
            laid.Moved,
            [.. Pinned(laid), .. New(was, then)],
            Sum(then.Score, was.Score),
            then.Figures.DrivingMinutes - was.Figures.DrivingMinutes,
            then.Figures.OvertimeMinutes - was.Figures.OvertimeMinutes,
            then.Figures.LateTasks - was.Figures.LateTasks);
    }

    private ImmutableArray<PlannedVisit> Part(Laid laid)
    {
        var changed = laid.Before.Concat(laid.After);
        var part = new Dictionary<string, PlannedVisit>(StringComparer.Ordinal);
        foreach (PlannedVisit visit in changed.Select(v => v.Patient).Distinct().SelectMany(table.OfPatient)) part[visit.Id] = visit;
        foreach (int day in changed.Select(HandTable.DayOf).SelectMany(d => new[] { d - 1, d, d + 1 }).Distinct())
            foreach (PlannedVisit visit in laid.Nurses.SelectMany(n => table.Day(n, day))) part[visit.Id] = visit;
        foreach (string nurse in laid.Nurses.Distinct().Where(n => table.Nurse(n).Caps.Any(c => c.AWeek)))
            for (int day = 0; day < table.Problem.DayCount; day++)
                foreach (PlannedVisit visit in table.Day(nurse, day)) part[visit.Id] = visit;
        return [.. part.Values.OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal)];
    }

    private WeekProblem ProblemOf(Laid laid, ImmutableArray<PlannedVisit> before)
    {
        string[] touched = [.. laid.Before.Concat(laid.After).Select(v => v.Patient).Distinct()];
        var patients = before.Select(v => v.Patient).Concat(touched).Distinct();
        var tasks = before.Concat(laid.After).SelectMany(v => table.CareOf(v)).Concat(touched.SelectMany(table.TasksOf)).DistinctBy(t => t.Id);
        var nurses = before.Concat(laid.After).SelectMany(HandTable.PeopleOf).Distinct();
        ImmutableArray<PlannedVisit> promised = [.. before.Select(v => table.Published.GetValueOrDefault(v.Id)).OfType<PlannedVisit>()];
        return table.Problem with
        {
            Patients = [.. patients.Select(table.Patient)],
            Tasks = [.. tasks],
            Nurses = [.. nurses.Select(table.Nurse)],
            Published = table.Problem.Published is { } published ? published with { Visits = promised } : null,
        };
    }

    private static WeekPlan Plan(WeekProblem part, ImmutableArray<PlannedVisit> visits)
    {
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        return new WeekPlan(visits, [.. part.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))], default);
    }

    private static IEnumerable<Finding> New(CheckReport was, CheckReport then)
    {
        if (then.Accepted) return [];
        var known = was.Findings.Select(f => (f.Rule, f.Visit, f.Nurse, f.Reason.Code)).ToHashSet();
        return then.Findings.Where(f => !known.Contains((f.Rule, f.Visit, f.Nurse, f.Reason.Code)));
    }

    private IEnumerable<Finding> Pinned(Laid laid) =>
        from was in laid.Before
        where table.IsPinned(was.Id) && laid.After.All(v => v.Id != was.Id || v.Start != was.Start || v.Nurse != was.Nurse || v.Second != was.Second)
        select new Finding("H13", was.Id, was.Nurse, new PlanningReason(
            ReasonCode.VisitPinned,
            $"The visit to {table.Patient(was.Patient).Name} on {PlanClock.Say(table.Problem.FirstDay, was.Start)} is pinned.",
            "Take the pin out first, if it may move."));

    private PlanScore Sum(PlanScore then, PlanScore was) => new(
        whole.Critical + then.Critical - was.Critical,
        whole.Risk + then.Risk - was.Risk,
        whole.Duties + then.Duties - was.Duties,
        whole.Work + then.Work - was.Work,
        whole.People + then.People - was.People,
        whole.UnusedLife + then.UnusedLife - was.UnusedLife);
}
