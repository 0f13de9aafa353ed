namespace HomeLine.Planning.Search.Ruins;

/// <summary>Visits of one day, drawn over all its nurses.</summary>
internal static class SameDay
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int[] routes = week.Routes.OfDay[chance.Next(week.Days)];
        for (int tries = 0; tries < 4 * pick.Wanted && routes.Length > 0 && !pick.Enough; tries++)
        {
            int route = routes[chance.Next(routes.Length)];
            if (state.Visits[route] > 0) pick.Slot(state, state.OrderOf(route)[chance.Next(state.Visits[route])]);
        }
    }
}
