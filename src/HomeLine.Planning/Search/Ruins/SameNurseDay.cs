namespace HomeLine.Planning.Search.Ruins;

/// <summary>All visits of one nurse-day, and now and then of another of the same day that passes near.</summary>
internal static class SameNurseDay
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int first = chance.Next(week.Routes.Count), day = week.Routes.Day[first];
        if (state.Visits[first] == 0) return;
        int[] near = week.People.Nearest[state.Patient[state.OrderOf(first)[chance.Next(state.Visits[first])]]];
        Take(state, first, pick);
        if (chance.Next(2) == 0) return;
        for (int tries = 0; tries < 6; tries++)
        {
            int other = state.RouteA[week.Slot(near[chance.Next(near.Length)], day)];
            if (other < 0 || other == first) continue;
            Take(state, other, pick);
            return;
        }
    }

    private static void Take(WeekState state, int route, RuinPick pick)
    {
        foreach (int slot in state.OrderOf(route)) pick.Slot(state, slot);
    }
}
