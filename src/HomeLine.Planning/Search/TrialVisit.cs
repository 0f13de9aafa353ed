namespace HomeLine.Planning.Search;

/// <summary>The visit being tried out, as a given nurse would make it.</summary>
internal static class TrialVisit
{
    public static void Set(CompiledWeek week, SlotCare care, WeekState state, int slot, int route)
    {
        int trial = state.Trial;
        state.Start[trial] = state.Start[slot];
        state.Minutes[trial] = state.Setup[trial] + state.Work[trial]
            + week.People.Interpreter[(state.Patient[trial] * week.NurseCount) + week.Routes.Nurse[route]];
        state.Latest[trial] = care.LatestDraw(state, trial, route);
    }
}
