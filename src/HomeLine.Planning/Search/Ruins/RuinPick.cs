namespace HomeLine.Planning.Search.Ruins;

/// <summary>The units a ruin wants taken out, each once, up to a number.</summary>
internal sealed class RuinPick(CompiledWeek week)
{
    private readonly bool[] _picked = new bool[week.Units.Count];
    private readonly int[] _units = new int[week.Units.Count];

    public int Count { get; private set; }

    public int Wanted { get; private set; }

    public bool Enough => Count >= Wanted;

    public ReadOnlySpan<int> Units => _units.AsSpan(0, Count);

    public void Begin(int wanted)
    {
        foreach (int u in Units) _picked[u] = false;
        Count = 0;
        Wanted = wanted;
    }

    public void Unit(WeekState state, int unit)
    {
        if (_picked[unit] || state.UnitSlot[unit] < 0 || state.Fixed[state.UnitSlot[unit]]) return;
        _picked[unit] = true;
        _units[Count++] = unit;
    }

    /// <summary>Everything done in a slot.</summary>
    public void Slot(WeekState state, int slot)
    {
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u]) Unit(state, u);
    }
}
