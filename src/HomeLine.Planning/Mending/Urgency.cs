using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>Which visits can wait least: critical care, then the last day on time, then the fewest minutes left to start in, then weight.</summary>
internal static class Urgency
{
    public static IEnumerable<int> Order(StandingTable table, IEnumerable<int> visits) => visits
        .OrderByDescending(v => table.Visits[v].Care.Any(t => t.Critical))
        .ThenBy(v => LastDay(table.Visits[v]))
        .ThenBy(v => MinutesLeft(table, table.Visits[v]))
        .ThenByDescending(v => table.Visits[v].Care.Sum(t => t.Weight))
        .ThenBy(v => v);

    private static int LastDay(StandingVisit visit) =>
        CompiledWeek.DayOf(Math.Min(visit.LateFrom == int.MaxValue ? int.MaxValue : visit.LateFrom - 1, visit.Spans.Length == 0 ? int.MaxValue : visit.Spans[^1].To));

    private static long MinutesLeft(StandingTable table, StandingVisit visit)
    {
        long minutes = 0;
        foreach (Span span in visit.Spans)
        {
            int from = Math.Max(span.From, table.Problem.Now), to = Math.Min(span.To, visit.LateFrom - 1);
            if (to >= from) minutes += to - from + 1;
        }

        return minutes;
    }
}
