namespace HomeLine.Planning.Search.Ruins;

/// <summary>Visits of one day near in place and in time of day, whoever makes them.</summary>
internal static class SameHours
{
    private const int Apart = 120;

    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int seed = chance.Next(week.PatientCount), day = chance.Next(week.Days), about = -1;
        foreach (int patient in week.People.Nearest[seed])
        {
            int slot = week.Slot(patient, day);
            if (state.RouteA[slot] < 0) continue;
            if (about < 0) about = state.Start[slot];
            if (Math.Abs(state.Start[slot] - about) <= Apart) pick.Slot(state, slot);
            if (pick.Enough) return;
        }
    }
}
