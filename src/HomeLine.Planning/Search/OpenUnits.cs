namespace HomeLine.Planning.Search;

/// <summary>
/// The units that stand in no visit though somebody could do them, kept current round by round. A unit that finds no place even with every nurse free (a draw too far from any drop
/// point) is not among them: trying it again is time lost.
/// </summary>
internal sealed class OpenUnits
{
    private readonly CompiledWeek _week;
    private readonly int[] _units;
    private readonly int[] _place;
    private readonly WeekSearch _search;
    private readonly bool?[] _placeable;
    private WeekState? _free;

    public OpenUnits(CompiledWeek week, WeekSearch search)
    {
        (_week, _search) = (week, search);
        _placeable = new bool?[week.Units.Count];
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
        bool open = state.UnitSlot[unit] < 0 && _week.Units.Choices[unit] > 0 && (_placeable[unit] ??= IsPlaceable(unit));
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

    private bool IsPlaceable(int unit)
    {
        _free ??= _search.Reading.Fresh();
        return !double.IsInfinity(_search.PlaceFor(_free, unit).Cost);
    }
}
