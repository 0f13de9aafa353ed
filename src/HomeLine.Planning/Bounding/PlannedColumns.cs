using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>A plan's nurse-days as columns, so that the master problem has a solution from the start.</summary>
internal sealed class PlannedColumns(BoundWeek week)
{
    public IEnumerable<DayColumn> Of(WeekPlan plan)
    {
        WeekProblem problem = week.Problem;
        var cost = new DayCost(problem);
        foreach (NurseDay day in week.Days)
        {
            string nurse = problem.Nurses[day.Nurse].Id;
            PlannedVisit[] visits =
            [
                .. plan.Visits.Where(v => (v.Nurse == nurse || v.Second == nurse) && (int)Math.Floor(v.Start / 1440.0) == day.Shift.Day)
                    .OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal),
            ];
            if (visits.Length == 0) continue;
            VisitNode?[] nodes = [.. visits.Select(v => NodeOf(day, v, v.Second == nurse))];
            if (nodes.Contains(null)) continue;
            if (cost.Of(day, nodes!) is { } column) yield return column;
        }
    }

    private VisitNode? NodeOf(NurseDay day, PlannedVisit visit, bool second)
    {
        var units = visit.Tasks.Select(t => week.UnitOfTask[t]).ToHashSet();
        return day.Nodes.FirstOrDefault(n => n.IsSecond == second && visit.Start >= n.From && visit.Start <= n.To && n.Units.Length == units.Count && n.Units.All(u => units.Contains(u.Index)));
    }
}
