namespace HomeLine.Planning.Search.Ruins;

/// <summary>Units drawn from the neighbours of a patient, or in small weeks from anywhere, also out of the middle of a bundle.</summary>
internal static class RandomUnits
{
    private const int Small = 400;

    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        bool anywhere = week.Units.Count <= Small;
        int[] near = week.People.Nearest[chance.Next(week.PatientCount)];
        for (int tries = 0; tries < 3 * pick.Wanted && !pick.Enough; tries++)
        {
            if (anywhere)
            {
                pick.Unit(state, chance.Next(week.Units.Count));
                continue;
            }

            int[] units = week.Units.OfPatient[near[chance.Next(near.Length)]];
            if (units.Length > 0) pick.Unit(state, units[chance.Next(units.Length)]);
        }
    }
}
