using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Closures as the search counts them: on a day on which roads are closed while somebody works, every trip takes its longest minutes all day. Stricter than
/// what holds, so that a plan found keeps what holds; the score is taken again on the roads as they are.
/// </summary>
internal static class WholeDays
{
    public static WeekProblem Of(WeekProblem problem) => problem.RoadChanges.IsEmpty
        ? problem
        : problem with { RoadChanges = [.. Enumerable.Range(0, problem.DayCount).Select(day => OfDay(problem, day)).OfType<RoadChange>()] };

    private static RoadChange? OfDay(WeekProblem problem, int day)
    {
        Shift[] shifts = [.. problem.Nurses.SelectMany(n => n.Shifts).Where(s => s.Day == day && !s.OnCall)];
        RoadChange[] held = [.. problem.RoadChanges.Where(c => shifts.Any(s => c.From < s.OvertimeTo && c.To > s.From))];
        return held.Length == 0 ? null : new RoadChange(day * 1440, (day + 1) * 1440, new Longest(problem.Travel, held));
    }

    private sealed class Longest(ITravelTimes usual, RoadChange[] closures) : ITravelTimes
    {
        public int Minutes(int from, int to) => closures.Max(c => Math.Max(usual.Minutes(from, to), c.Travel.Minutes(from, to)));
    }
}
