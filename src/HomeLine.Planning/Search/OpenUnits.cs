namespace HomeLine.Planning.Search;

/// <summary>The units that stand in no visit though somebody could do them, kept current round by round.</summary>
internal sealed class OpenUnits
{
    private readonly CompiledWeek _week;
    private readonly int[] _units;
    private readonly int[] _place;

    public OpenUnits(CompiledWeek week)
    {
        _week = week;
        _units = new int[week.Units.Count];
        _place = new int[week.Units.Count];
        Array.Fill(_place, -1);
    }

    public int Count { get; private set; }

    public int this[int index] => _units[index];

    public void Recount(WeekState state)
    {
        for (int unit = 0; unit < _week.Units.Count; unit++) Update(state, unit);
    }

    public void Update(WeekState state, int unit)
    {
        bool open = state.UnitSlot[unit] < 0 && _week.Units.Choices[unit] > 0;
        if (open == (_place[unit] >= 0)) return;
        if (open)
        {
            _place[unit] = Count;
            _units[Count++] = unit;
            return;
        }

        int last = _units[--Count];
        (_units[_place[unit]], _place[last]) = (last, _place[unit]);
        _place[unit] = -1;
    }
}
