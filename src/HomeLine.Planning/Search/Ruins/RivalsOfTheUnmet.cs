namespace HomeLine.Planning.Search.Ruins;

/// <summary>Makes room for a unit that is unmet, or else any: empties nurse-days that could do it.</summary>
internal static class RivalsOfTheUnmet
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int seed = Seed(week, state, chance);
        pick.Unit(state, seed);
        for (int tries = 0; tries < 8 && !pick.Enough; tries++)
        {
            int route = chance.Next(week.Routes.Count);
            if (!week.Units.Able[(seed * week.Routes.Count) + route]) continue;
            foreach (int slot in state.OrderOf(route)) pick.Slot(state, slot);
        }
    }

    private static int Seed(CompiledWeek week, WeekState state, SeededChance chance)
    {
        int start = chance.Next(week.Units.Count);
        for (int i = 0; i < week.Units.Count; i++)
        {
            int unit = (start + i) % week.Units.Count;
            if (state.UnitSlot[unit] < 0 && week.Units.Choices[unit] > 0) return unit;
        }

        return start;
    }
}
