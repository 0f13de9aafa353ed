namespace HomeLine.Planning.Search.Ruins;

/// <summary>
/// Short strings of neighbouring visits from the nurse-days that pass near a patient (adjacent string removal, Christiaens and Vanden Berghe 2020,
/// here over all days of the week).
/// </summary>
internal static class NearbyStrings
{
    private const int LongestString = 4;

    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int seed = chance.Next(week.PatientCount);
        foreach (int patient in week.People.Nearest[seed])
        {
            int offset = chance.Next(week.Days);
            for (int d = 0; d < week.Days; d++)
            {
                int slot = week.Slot(patient, (d + offset) % week.Days);
                if (state.RouteA[slot] < 0) continue;
                String(state, state.RouteA[slot], slot, 1 + chance.Next(LongestString), chance, pick);
                if (pick.Enough) return;
            }
        }
    }

    private static void String(WeekState state, int route, int slot, int length, SeededChance chance, RuinPick pick)
    {
        Span<int> order = state.OrderOf(route);
        int first = Math.Max(0, order.IndexOf(slot) - chance.Next(length));
        for (int i = first; i < Math.Min(order.Length, first + length) && !pick.Enough; i++) pick.Slot(state, order[i]);
    }
}
