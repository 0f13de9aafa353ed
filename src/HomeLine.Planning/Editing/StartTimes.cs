using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Editing;

/// <summary>When a nurse can be at a door, and when a visit may then start.</summary>
internal sealed class StartTimes(HandTable table)
{
    private const int Tries = 8;

    /// <summary>The first minute she can be there after another visit, or from home; by a drop point where those are given.</summary>
    public int Arrival(string nurse, int day, PlannedVisit? before, PlannedVisit visit, HandInStops? byDrop = null)
    {
        Nurse who = table.Nurse(nurse);
        int place = table.Patient(visit.Patient).Place;
        if (before is null)
        {
            int from = who.Shifts.FirstOrDefault(s => s.Day == day)?.From ?? day * 1440;
            return from + table.Trips.Leaving(who.Home, place, from);
        }

        int leave = Leave(before), here = table.Patient(before.Patient).Place;
        return leave + (byDrop?.Shortest(here, place, leave).Minutes ?? table.Trips.Leaving(here, place, leave));
    }

    /// <summary>When she is home after her last visit.</summary>
    public int HomeAgain(string nurse, PlannedVisit last) => Leave(last) + table.Trips.Leaving(table.Patient(last.Patient).Place, table.Nurse(nurse).Home, Leave(last));

    /// <summary>When she has to be home, overtime included.</summary>
    public int Limit(string nurse, int day) => table.Nurse(nurse).Shifts.FirstOrDefault(s => s.Day == day)?.OvertimeTo ?? int.MaxValue;

    /// <summary>The first minute from the arrival on at which home and care allow a start that day; the arrival itself when there is none.</summary>
    public int FirstAllowed(PlannedVisit visit, int day, int arrival)
    {
        ImmutableArray<CareTask> care = table.CareOf(visit);
        int start = Math.Max(Math.Max(arrival, table.Problem.Now), care.IsEmpty ? 0 : care.Max(t => t.Opens));
        for (int i = 0; i < Tries; i++)
        {
            int next = Next(table.Patient(visit.Patient).StartSpans, start);
            foreach (CareTask task in care) next = Next(task.StartSpans, next);
            if (next == start) break;
            start = next;
        }

        return start < (day + 1) * 1440 ? start : arrival;
    }

    private int Leave(PlannedVisit visit) => visit.Start + visit.Minutes + table.Problem.Rules.DocumentationMinutes;

    private static int Next(ImmutableArray<Span> spans, int start)
    {
        if (spans.IsDefaultOrEmpty) return start;
        foreach (Span span in spans)
            if (span.To >= start) return Math.Max(start, span.From);
        return int.MaxValue;
    }
}
