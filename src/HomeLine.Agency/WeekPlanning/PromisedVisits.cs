using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// What a published week still promises, as the planner's published plan: where the search starts, and what it may not move.
/// </summary>
public static class PromisedVisits
{
    /// <summary>The demand with the visits of the published week that lie ahead; unchanged when the week is not published.</summary>
    public static WeekDemand In(WeekDemand demand, PlannedWeek? week)
    {
        if (week is null) return demand;
        var open = demand.Needs.Values.GroupBy(n => n.Key).ToDictionary(g => g.Key, g => g.Select(n => n.Task).ToList());
        var visits = ImmutableArray.CreateBuilder<PlannedVisit>();
        foreach (WeekVisit visit in week.Visits.Where(v => v.Held is null).OrderBy(v => v.Day).ThenBy(v => v.Start))
        {
            int start = demand.Calendar.Minute(visit.Day, visit.Start);
            if (start < demand.Problem.Now) continue;
            ImmutableArray<string> tasks = [.. visit.Care.Select(c => TakeNearest(open, c.Key, start)).OfType<string>().Order(StringComparer.Ordinal)];
            if (!tasks.IsEmpty) visits.Add(Visit(visit, start, tasks, demand.Calendar));
        }

        return demand with { Problem = demand.Problem with { Published = new WeekPlan(visits.ToImmutable(), [], default) } };
    }

    /// <summary>The open task of the need whose window holds the start, else the nearest; each is taken once.</summary>
    private static string? TakeNearest(Dictionary<string, List<CareTask>> open, string key, int start)
    {
        if (!open.TryGetValue(key, out List<CareTask>? tasks) || tasks.Count == 0) return null;
        CareTask nearest = Nearest(tasks, t => t, start)!;
        tasks.Remove(nearest);
        return nearest.Id;
    }

    /// <summary>Of a need's occurrences, the one a visit at this start answers; empty when there is none.</summary>
    internal static T? Nearest<T>(IEnumerable<T> occurrences, Func<T, CareTask> task, int start)
        where T : class => occurrences
        .OrderBy(o => start >= task(o).Opens && start < task(o).LateFrom ? 0 : 1)
        .ThenBy(o => Math.Abs(task(o).Opens - start))
        .FirstOrDefault();

    private static PlannedVisit Visit(WeekVisit visit, int start, ImmutableArray<string> tasks, PlanCalendar calendar) => new()
    {
        Id = visit.Id,
        Patient = visit.Patient.Value,
        Nurse = visit.Nurse,
        Second = visit.Second,
        Start = start,
        Minutes = visit.Minutes,
        Tasks = tasks,
        Promise = visit.Promise,
        ToldFrom = visit.ToldFrom is { } told ? calendar.Minute(visit.Day, told) : null,
    };
}
