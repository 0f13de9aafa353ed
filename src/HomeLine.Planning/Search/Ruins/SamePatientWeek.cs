namespace HomeLine.Planning.Search.Ruins;

/// <summary>Everything in the week of a patient and of the nearest others: frees the choice of days and bundles.</summary>
internal static class SamePatientWeek
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        foreach (int patient in week.People.Nearest[chance.Next(week.PatientCount)])
        {
            for (int day = 0; day < week.Days; day++) pick.Slot(state, week.Slot(patient, day));
            if (pick.Enough) return;
        }
    }
}
