namespace HomeLine.Planning.Search.Ruins;

/// <summary>Units drawn from anywhere, also out of the middle of a bundle.</summary>
internal static class RandomUnits
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        for (int tries = 0; tries < 3 * pick.Wanted && !pick.Enough; tries++) pick.Unit(state, chance.Next(week.Units.Count));
    }
}
