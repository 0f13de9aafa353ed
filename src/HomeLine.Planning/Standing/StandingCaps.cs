using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>Whether a nurse who takes only so many visits of a kind may take one more.</summary>
internal static class StandingCaps
{
    /// <summary>The cap that one more visit would break; empty when none.</summary>
    public static VisitCap? Broken(StandingTable table, StandingState state, IEnumerable<CareTask> care, int nurse, int day)
    {
        foreach (VisitCap cap in table.Problem.Nurses[nurse].Caps)
        {
            if (care.Any(t => t.Kinds.Contains(cap.Kind)) && Count(table, state, cap, nurse, day) >= cap.Most) return cap;
        }

        return null;
    }

    /// <summary>Days that count together with a day for a nurse: her week when she has a cap for it.</summary>
    public static IEnumerable<int> DaysBeside(StandingTable table, int nurse, int day) => table.Problem.Nurses[nurse].Caps.Any(c => c.AWeek)
        ? Enumerable.Range(table.FirstDay, table.Days).Where(d => Math.Floor(d / 7.0) == Math.Floor(day / 7.0))
        : [];

    private static int Count(StandingTable table, StandingState state, VisitCap cap, int nurse, int day)
    {
        int count = 0;
        for (int other = table.FirstDay; other < table.FirstDay + table.Days; other++)
        {
            if (cap.Stretch(other) != cap.Stretch(day)) continue;
            foreach (int visit in state.On(table.Line(nurse, other)))
            {
                if (visit != state.Newcomer && state.Nurse[visit] == nurse && table.Visits[visit].Care.Any(t => t.Kinds.Contains(cap.Kind))) count++;
            }
        }

        return count;
    }
}
