namespace HomeLine.Planning.Search;

/// <summary>
/// Puts what a ruin took out, and some of what was open before, back at its cheapest place, one after another in an order drawn anew each time.
/// </summary>
internal sealed class Recreate(CompiledWeek week, Insertion insertion, PlanEditor editor)
{
    /// <summary>So many of the units open before are tried again in a round.</summary>
    private const int OpenTried = 8;

    /// <summary>Where nobody near has room, everybody is asked one time in so many: it takes long.</summary>
    private const int FarTriedOnceIn = 8;

    private readonly bool _hasFar = NearRoutes.LeavesOut(week);

    private readonly TouchedSet _chosen = new(week.Units.Count);
    private readonly int[] _units = new int[week.Units.Count];
    private readonly double[] _keys = new double[week.Units.Count];

    public void Apply(WeekState state, ReadOnlySpan<int> removed, OpenUnits open, SeededChance chance)
    {
        int count = Collect(state, removed, open, chance), order = chance.Next(6);
        for (int i = 0; i < count; i++) _keys[i] = Key(_units[i], order, chance);
        Array.Sort(_keys, _units, 0, count);
        for (int i = 0; i < count; i++)
        {
            Proposal place = insertion.Best(state, _units[i], chance);
            if (place.Cost >= 0 && _hasFar && chance.Next(FarTriedOnceIn) == 0) place = insertion.Best(state, _units[i], everybody: true);
            if (place.Cost < 0) editor.Insert(state, _units[i], place);
        }
    }

    private int Collect(WeekState state, ReadOnlySpan<int> removed, OpenUnits open, SeededChance chance)
    {
        _chosen.Clear();
        foreach (int unit in removed)
        {
            if (state.UnitSlot[unit] < 0) _chosen.Add(unit);
        }

        int start = open.Count == 0 ? 0 : chance.Next(open.Count);
        for (int i = 0; i < Math.Min(OpenTried, open.Count); i++)
        {
            int unit = open[(start + i) % open.Count];
            if (state.UnitSlot[unit] < 0) _chosen.Add(unit);
        }

        _chosen.Items.CopyTo(_units);
        return _chosen.Count;
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
