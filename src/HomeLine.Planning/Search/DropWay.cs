namespace HomeLine.Planning.Search;

/// <summary>Where the nurse of a scratch order of slots hands her specimens in (<see cref="HandInStops"/>).</summary>
internal sealed class DropWay
{
    private readonly CompiledWeek _week;
    private readonly int _charting;
    private readonly int _handIn;
    private readonly HandInStops _stops;

    public DropWay(CompiledWeek week, int width)
    {
        _week = week;
        _charting = week.Problem.Rules.DocumentationMinutes;
        _handIn = week.Problem.Rules.HandInMinutes ?? 0;
        IsPlanned = week.PlansDrops;
        _stops = new HandInStops(week.Problem, week.Roads.Leaving, week.Roads.OfDrop);
        _stops.Reserve(width + 2);
    }

    /// <summary>Whether nurses drive to drop points at all.</summary>
    public bool IsPlanned { get; }

    /// <summary>By position: minutes a stop after it adds to the way on.</summary>
    public int[] Extra => _stops.Extra;

    /// <summary>By position: whether there is a stop after it.</summary>
    public bool[] Stops => _stops.Stops;

    /// <summary>Whether the nurse of a day draws at a visit.</summary>
    public bool Draws(WeekState state, int route, int slot) => IsPlanned && state.DrawToDrop[slot] != int.MaxValue && state.RouteB[slot] != route;

    /// <summary>Whether the nurse of a day draws at any visit of an order.</summary>
    public bool DrawsAny(WeekState state, int route, ReadOnlySpan<int> order)
    {
        if (!IsPlanned) return false;
        foreach (int slot in order)
        {
            if (Draws(state, route, slot)) return true;
        }

        return false;
    }

    /// <summary>Minutes from a visit by the nearest drop point to the next place, and the drop point.</summary>
    public (int Minutes, int Drop) Shortest(int from, int next, int leave) => _stops.Shortest(from, next, leave);

    /// <summary>Minutes by a drop point to arrive at the next place by a minute.</summary>
    public int Reaching(int from, int drop, int next, int arrive)
    {
        int place = _week.Roads.OfDrop(drop), there = arrive - _week.Roads.Reaching(place, next, arrive) - _handIn;
        return arrive - there + _week.Roads.Reaching(from, place, there);
    }

    /// <summary>Works out <see cref="Stops"/> and <see cref="Extra"/>; false when a specimen is handed in nowhere in time. What lies in fixed visits is a fact.</summary>
    /// <param name="state">The plan the slots belong to.</param>
    /// <param name="route">The nurse-day.</param>
    /// <param name="order">Its slots.</param>
    /// <param name="starts">Their starts.</param>
    /// <param name="mayPush">Whether a stop may take time that the next visit does not leave.</param>
    public bool Read(WeekState state, int route, ReadOnlySpan<int> order, ReadOnlySpan<int> starts, bool mayPush = false)
    {
        for (int i = 0; i < order.Length; i++)
        {
            int slot = order[i];
            _stops.Seats[i] = new DropSeat(
                _week.Roads.OfPatient(state.Patient[slot]),
                starts[i],
                starts[i] + state.Minutes[slot] + _charting,
                Draws(state, route, slot) ? state.DrawToDrop[slot] : int.MaxValue,
                state.Fixed[slot]);
        }

        return _stops.Read(order.Length, Roads.OfNurse(_week.Routes.Nurse[route]), mayPush) == 0;
    }
}
