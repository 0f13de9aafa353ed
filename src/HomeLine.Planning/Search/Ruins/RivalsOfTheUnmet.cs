namespace HomeLine.Planning.Search.Ruins;

/// <summary>Makes room for a unit that is unmet, or else any: empties nurse-days near its home that could do it.</summary>
internal static class RivalsOfTheUnmet
{
    public static void Pick(CompiledWeek week, WeekState state, OpenUnits open, SeededChance chance, RuinPick pick)
    {
        int seed = open.Count > 0 ? open[chance.Next(open.Count)] : chance.Next(week.Units.Count);
        pick.Unit(state, seed);
        int[] near = week.People.Nearest[week.Units.Patient[seed]], nurses = week.People.NearNurses[week.Units.Patient[seed]];
        int[] days = week.Units.DaysOf[seed];
        if (days.Length == 0) return;
        for (int tries = 0; tries < 12 && !pick.Enough; tries++)
        {
            int day = days[chance.Next(days.Length)];
            int route = chance.Next(2) == 0
                ? week.Routes.Find(nurses[chance.Next(nurses.Length)], day)
                : state.RouteA[week.Slot(near[chance.Next(near.Length)], day)];
            if (route < 0 || !week.Units.Able(seed, route)) continue;
            foreach (int slot in state.OrderOf(route)) pick.Slot(state, slot);
        }
    }
}
