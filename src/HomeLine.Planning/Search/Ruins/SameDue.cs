namespace HomeLine.Planning.Search.Ruins;

/// <summary>Care of neighbours that falls due about the same day: frees the choice between the days of their windows.</summary>
internal static class SameDue
{
    public static void Pick(CompiledWeek week, WeekState state, SeededChance chance, RuinPick pick)
    {
        int seed = chance.Next(week.Units.Count), due = week.Tasks.LastDayOnTime[week.Units.Tasks[seed][0]];
        foreach (int patient in week.People.Nearest[week.Units.Patient[seed]])
        {
            foreach (int unit in week.Units.OfPatient[patient])
            {
                int other = week.Tasks.LastDayOnTime[week.Units.Tasks[unit][0]];
                if (other == due || Math.Abs((long)other - due) <= 1) pick.Unit(state, unit);
            }

            if (pick.Enough) return;
        }
    }
}
