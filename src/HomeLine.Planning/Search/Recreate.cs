namespace HomeLine.Planning.Search;

/// <summary>Puts every unmet unit back at its cheapest place, one after another in an order drawn anew each time.</summary>
internal sealed class Recreate(CompiledWeek week, Insertion insertion, PlanEditor editor)
{
    private readonly int[] _units = new int[week.Units.Count];
    private readonly double[] _keys = new double[week.Units.Count];

    public void Apply(WeekState state, SeededChance chance)
    {
        int count = Collect(state), order = chance.Next(6);
        for (int i = 0; i < count; i++) _keys[i] = Key(_units[i], order, chance);
        Array.Sort(_keys, _units, 0, count);
        for (int i = 0; i < count; i++)
        {
            Proposal place = insertion.Best(state, _units[i], chance);
            if (place.Cost < 0) editor.Insert(state, _units[i], place);
        }
    }

    private int Collect(WeekState state)
    {
        int count = 0;
        for (int u = 0; u < week.Units.Count; u++)
        {
            if (state.UnitSlot[u] < 0 && week.Units.Choices[u] > 0) _units[count++] = u;
        }

        return count;
    }

    /// <summary>Smaller keys go first; a draw below one breaks ties, so equal keys fall in a random order that repeats with the seed.</summary>
    private double Key(int unit, int order, SeededChance chance)
    {
        int task = week.Units.Tasks[unit][0];
        int key = order switch
        {
            0 => 0,
            1 => week.Units.Choices[unit],
            2 => -week.Roads.Minutes(Roads.OfNurse(0), week.Roads.OfPatient(week.Units.Patient[unit])),
            3 => -(week.Units.Setup[unit] + week.Units.Work[unit]),
            4 => week.Tasks.LateFrom[task] / 60,
            _ => -(week.Tasks.Weight[task] + (week.Tasks.Critical[task] ? 1_000 : 0)),
        };
        return key + chance.NextFraction();
    }
}
