using HomeLine.Planning.Problem;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>Care that lost its visit joins another visit of the same patient, which then takes longer.</summary>
internal static class Merging
{
    /// <summary>Minutes of a visit with all care that joined it.</summary>
    public static int Minutes(StandingTable table, StandingState state, int visit) => Minutes(table, state, visit, state.Nurse[visit]);

    /// <summary>Minutes with a nurse; as published when nothing joined it.</summary>
    public static int Minutes(StandingTable table, StandingState state, int visit, int nurse)
    {
        StandingVisit facts = table.Visits[visit];
        int setup = 0, work = 0, joined = 0;
        foreach (CareTask task in facts.Care) (setup, work) = (Math.Max(setup, task.SetupMinutes), work + task.WorkMinutes);
        foreach (int mate in table.OfPatient[facts.Patient])
        {
            if (state.MergedInto[mate] != visit) continue;
            joined++;
            foreach (CareTask task in table.Visits[mate].Care) (setup, work) = (Math.Max(setup, task.SetupMinutes), work + task.WorkMinutes);
        }

        if (joined == 0) return nurse == facts.WasNurse ? facts.Was.Minutes : table.MinutesOf(facts, nurse);
        return setup + work + table.MinutesOf(facts, nurse) - facts.BaseMinutes;
    }

    /// <summary>Whether a visit may take another one's care in at its start: one nurse who may do it, an allowed start, separations kept.</summary>
    public static bool Allows(StandingTable table, StandingState state, int visit, int into)
    {
        StandingVisit facts = table.Visits[visit], host = table.Visits[into];
        if (visit == into || state.Nurse[into] < 0 || state.Second[into] >= 0 || host.Fixed || host.Care.Length == 0 || facts.Care.Length == 0) return false;
        // A visit for safety alone may come on top of the day's visit; with other care in it, it may not.
        if (host.SafetyOnly && !facts.SafetyOnly) return false;
        return Holds(table, state, visit, into) && table.Able(visit, state.Nurse[into], Search.CompiledWeek.DayOf(state.Start[into]));
    }

    /// <summary>Whether care may be done where it has joined, now that the visit may have been pushed.</summary>
    public static bool Holds(StandingTable table, StandingState state, int visit, int into)
    {
        StandingVisit facts = table.Visits[visit];
        int start = state.Start[into];
        return state.Nurse[into] >= 0 && start >= table.Problem.Now && facts.StartAfter(start) == start && PushTrial.TiesHold(state, facts, start);
    }
}
