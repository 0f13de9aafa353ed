using System.Collections.Immutable;
using HomeLine.Agency.WeekEditing;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Whose turn the weekend is: a nurse who had more weekend days in the weeks before costs more on the next one.</summary>
internal static class WeekendTurns
{
    /// <summary>The problem with the points of each weekend shift: for every weekend day she had more than the one who had fewest of those rostered that day.</summary>
    public static WeekDemand In(WeekDemand demand, ImmutableArray<PlannedWeek> before, LoadRules rules)
    {
        if (before.IsEmpty) return demand;
        WeekProblem problem = demand.Problem;
        var had = problem.Nurses.ToDictionary(n => n.Id, n => before.Sum(w => WeekShare.Of(w, n.Id, rules).WeekendDays));
        var least = Enumerable.Range(0, problem.DayCount).Where(d => WeekShare.IsWeekend(demand.Calendar.Date(d)))
            .ToDictionary(d => d, d => problem.Nurses.Where(n => n.Shifts.Any(s => s.Day == d && !s.OnCall)).Select(n => had[n.Id]).DefaultIfEmpty(0).Min());
        return demand with
        {
            Problem = problem with
            {
                Nurses = [.. problem.Nurses.Select(n => n with
                {
                    Shifts = [.. n.Shifts.Select(s => !s.OnCall && least.TryGetValue(s.Day, out int fewest) ? s with { TurnPoints = problem.Rules.Soft.WeekendTurn * (had[n.Id] - fewest) } : s)],
                })],
            },
        };
    }
}
