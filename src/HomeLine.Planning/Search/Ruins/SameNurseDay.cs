namespace HomeLine.Planning.Search.Ruins;

/// <summary>All visits of one or two nurse-days of the same day.</summary>
internal static class SameNurseDay
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int first = chance.Next(week.Routes.Count);
        Take(state, first, pick);
        int[] others = week.Routes.OfDay[week.Routes.Day[first]];
        if (others.Length > 0 && chance.Next(2) == 0) Take(state, others[chance.Next(others.Length)], pick);
    }

    private static void Take(WeekState state, int route, RuinPick pick)
    {
        foreach (int slot in state.OrderOf(route)) pick.Slot(state, slot);
    }
}
