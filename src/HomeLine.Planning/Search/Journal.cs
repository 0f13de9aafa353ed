namespace HomeLine.Planning.Search;

/// <summary>
/// Remembers how everything touched in a round was before, so that a refused round costs what it touched, and what was touched since the best plan was
/// kept, so that keeping the next one costs no more.
/// </summary>
internal sealed class Journal
{
    private readonly WeekState _live, _before;
    private readonly TouchedSet _routesSinceBest, _slotsSinceBest, _unitsSinceBest;

    public Journal(CompiledWeek week, WeekState live)
    {
        _live = live;
        _before = new WeekState(week);
        Routes = new TouchedSet(week.Routes.Count);
        Slots = new TouchedSet(live.SlotCount);
        Units = new TouchedSet(week.Units.Count);
        _routesSinceBest = new TouchedSet(week.Routes.Count);
        _slotsSinceBest = new TouchedSet(live.SlotCount);
        _unitsSinceBest = new TouchedSet(week.Units.Count);
    }

    public TouchedSet Routes { get; }

    public TouchedSet Slots { get; }

    public TouchedSet Units { get; }

    /// <summary>How things were before the round; holds for what was touched.</summary>
    public WeekState Before => _before;

    public void Route(int route)
    {
        if (Routes.Add(route)) _before.CopyRoute(_live, route);
    }

    public void Slot(int slot)
    {
        if (Slots.Add(slot)) _before.CopySlot(_live, slot);
    }

    public void Unit(int unit)
    {
        if (Units.Add(unit)) _before.CopyUnit(_live, unit);
    }

    /// <summary>The round stands.</summary>
    public void Accept()
    {
        _routesSinceBest.AddAll(Routes);
        _slotsSinceBest.AddAll(Slots);
        _unitsSinceBest.AddAll(Units);
        Clear();
    }

    /// <summary>Everything as before the round.</summary>
    public void TakeBack()
    {
        foreach (int route in Routes.Items) _live.CopyRoute(_before, route);
        foreach (int slot in Slots.Items) _live.CopySlot(_before, slot);
        foreach (int unit in Units.Items) _live.CopyUnit(_before, unit);
        Clear();
    }

    /// <summary>Brings the kept best plan up to the plan as it stands; the round must have been accepted.</summary>
    public void Keep(WeekState best) => Level(best, _live);

    /// <summary>Back to the best plan.</summary>
    public void Return(WeekState best) => Level(_live, best);

    private void Level(WeekState to, WeekState from)
    {
        foreach (int route in _routesSinceBest.Items) to.CopyRoute(from, route);
        foreach (int slot in _slotsSinceBest.Items) to.CopySlot(from, slot);
        foreach (int unit in _unitsSinceBest.Items) to.CopyUnit(from, unit);
        _routesSinceBest.Clear();
        _slotsSinceBest.Clear();
        _unitsSinceBest.Clear();
    }

    private void Clear()
    {
        Routes.Clear();
        Slots.Clear();
        Units.Clear();
    }
}

/// <summary>A set of indices that is cheap to fill, list and clear.</summary>
internal sealed class TouchedSet(int size)
{
    private readonly int[] _items = new int[size];
    private readonly int[] _round = new int[size];
    private int _now = 1;

    public int Count { get; private set; }

    public ReadOnlySpan<int> Items => _items.AsSpan(0, Count);

    /// <summary>True when it was not in it.</summary>
    public bool Add(int item)
    {
        if (_round[item] == _now) return false;
        _round[item] = _now;
        _items[Count++] = item;
        return true;
    }

    public bool Has(int item) => _round[item] == _now;

    public void AddAll(TouchedSet others)
    {
        foreach (int item in others.Items) Add(item);
    }

    public void Clear()
    {
        Count = 0;
        _now++;
    }
}
