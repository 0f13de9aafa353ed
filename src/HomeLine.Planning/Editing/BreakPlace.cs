using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Editing;

/// <summary>Where a nurse's break falls between her visits, for drawing: in the first gap that holds it, as early as it may be.</summary>
internal static class BreakPlace
{
    /// <summary>The break as a span of plan minutes; empty when it falls before the first or after the last visit, or none is due.</summary>
    public static Span? Of(HandTable table, string nurse, int day)
    {
        if (table.Nurse(nurse).Shifts.FirstOrDefault(s => s.Day == day) is not { LunchMinutes: > 0 } shift) return null;
        ImmutableArray<PlannedVisit> visits = table.Day(nurse, day);
        int[]? atDrops = table.Problem.Rules.HandInMinutes is null ? null : table.Stops(nurse, visits).Extra;
        for (int i = 1; i < visits.Length; i++)
        {
            int leave = visits[i - 1].Start + visits[i - 1].Minutes + table.Problem.Rules.DocumentationMinutes;
            int leg = table.Trips.Leaving(table.Patient(visits[i - 1].Patient).Place, table.Patient(visits[i].Patient).Place, leave) + (atDrops?[i - 1] ?? 0);
            int from = Math.Max(leave, shift.LunchFrom);
            bool roomy = leave + leg + shift.LunchMinutes <= visits[i].Start;
            if (roomy && from <= shift.LunchTo && from + shift.LunchMinutes <= visits[i].Start) return new Span(from, from + shift.LunchMinutes);
        }

        return null;
    }
}
