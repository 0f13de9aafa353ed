using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Where the nurse of a scratch order hands her specimens in, by the starts alone: the ways that add the fewest minutes in all without moving a visit, of equal ones the
/// earliest, exactly as a reader of the plan would find them. Nothing is allocated.
/// </summary>
internal sealed class DropWay
{
    private const int Missing = 1_000_000;

    private readonly CompiledWeek _week;
    private readonly int _charting;
    private readonly int _handIn;
    private readonly int[] _best;
    private readonly int[] _after;
    private readonly int[] _minutes;

    public DropWay(CompiledWeek week, int width)
    {
        _week = week;
        _charting = week.Problem.Rules.DocumentationMinutes;
        _handIn = week.Problem.Rules.HandInMinutes ?? 0;
        IsPlanned = week.PlansDrops;
        _best = new int[width + 2];
        _after = new int[width + 2];
        _minutes = new int[width + 2];
        Extra = new int[width + 2];
        Stops = new bool[width + 2];
    }

    /// <summary>Whether nurses drive to drop points at all.</summary>
    public bool IsPlanned { get; }

    /// <summary>By position: minutes a stop after it adds to the way on.</summary>
    public int[] Extra { get; }

    /// <summary>By position: whether there is a stop after it.</summary>
    public bool[] Stops { get; }

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
    public (int Minutes, int Drop) Shortest(int from, int next, int leave)
    {
        (int Minutes, int Drop) best = (ITravelTimes.Unreachable, -1);
        for (int drop = 0; drop < _week.Problem.DropPoints.Length; drop++)
        {
            int place = _week.Roads.OfDrop(drop), on = leave + _week.Roads.Leaving(from, place, leave) + _handIn;
            int minutes = on + _week.Roads.Leaving(place, next, on) - leave;
            if (minutes < best.Minutes) best = (minutes, drop);
        }

        return best;
    }

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
        int count = order.Length;
        _best[count] = 0;
        for (int i = count - 1; i >= 0; i--)
        {
            _best[i] = _best[i + 1];
            _after[i] = -1;
            if (!Draws(state, route, order[i])) continue;
            _best[i] += Missing;
            Consider(state, route, order, starts, i, mayPush);
        }

        Array.Clear(Extra);
        Array.Clear(Stops);
        bool inTime = true;
        for (int i = 0; i < count;)
        {
            int after = _after[i];
            if (after >= 0) (Extra[after], Stops[after]) = (_minutes[i], true);
            else if (Draws(state, route, order[i]) && !state.Fixed[order[i]]) inTime = false;
            i = after >= 0 ? after + 1 : i + 1;
        }

        return inTime;
    }

    private void Consider(WeekState state, int route, ReadOnlySpan<int> order, ReadOnlySpan<int> starts, int first, bool mayPush)
    {
        Roads roads = _week.Roads;
        int due = int.MaxValue, day = _week.Routes.Day[route] + _week.FirstDay;
        for (int after = first; after < order.Length; after++)
        {
            int slot = order[after], leave = starts[after] + state.Minutes[slot] + _charting, here = roads.OfPatient(state.Patient[slot]);
            bool last = after + 1 == order.Length;
            int next = last ? Roads.OfNurse(_week.Routes.Nurse[route]) : roads.OfPatient(state.Patient[order[after + 1]]);
            if (Draws(state, route, slot)) due = Math.Min(due, starts[after] + state.DrawToDrop[slot]);
            if (leave > due) return;
            for (int drop = 0; drop < _week.Problem.DropPoints.Length; drop++)
            {
                int place = roads.OfDrop(drop), arrive = leave + roads.Leaving(here, place, leave), on = arrive + _handIn;
                if (arrive > due || !Collected(drop, day, arrive)) continue;
                int way = roads.Leaving(place, next, on);
                if (way >= ITravelTimes.Unreachable || (!last && !mayPush && on + way > starts[after + 1])) continue;
                int minutes = on + way - leave - roads.Leaving(here, next, leave);
                if (minutes + _best[after + 1] >= _best[first]) continue;
                (_best[first], _after[first], _minutes[first]) = (minutes + _best[after + 1], after, minutes);
            }
        }
    }

    private bool Collected(int drop, int day, int arrive)
    {
        foreach (int cutoff in _week.Problem.DropPoints[drop].Cutoffs)
        {
            if (arrive <= cutoff && CompiledWeek.DayOf(cutoff) == day) return true;
        }

        return false;
    }
}
