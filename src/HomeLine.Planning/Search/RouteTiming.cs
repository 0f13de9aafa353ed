using HomeLine.Planning.Cost;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Walks a nurse-day on a scratch order of slots: every visit as early as the road, charting, the break and its own times allow. The nurse leaves
/// home just in time for the first visit. Where she would then wait between visits, the day as written begins as much later as saves waiting without
/// making anybody's care later in points; the search goes on counting from the early starts, which leave most room.
/// </summary>
internal sealed class RouteTiming
{
    private readonly CompiledWeek _week;
    private readonly SlotCare _care;
    private readonly int _charting;
    private readonly int[] _best;
    private readonly int[] _bestWritten;
    private readonly int[] _early;
    private readonly DropWay _drops;
    private readonly int[] _via;
    private double _ownLate;
    private bool _draws;

    public RouteTiming(CompiledWeek week, SlotCare care, int width)
    {
        _week = week;
        _care = care;
        _charting = week.Problem.Rules.DocumentationMinutes;
        Order = new int[width + 1];
        Starts = new int[width + 1];
        Written = new int[width + 1];
        _best = new int[width + 1];
        _bestWritten = new int[width + 1];
        _early = new int[width + 1];
        _via = new int[width + 1];
        _drops = new DropWay(week, width);
    }

    /// <summary>The slots to walk.</summary>
    public int[] Order { get; }

    /// <summary>The starts found by the last walk that succeeded.</summary>
    public int[] Starts { get; }

    /// <summary>The starts of the plan as written: never earlier, and with the waiting that could not be avoided.</summary>
    public int[] Written { get; }

    public int Count { get; set; }

    public int Driving { get; private set; }

    public int Wait { get; private set; }

    public int Overtime { get; private set; }

    public int Stay { get; private set; }

    public double Late { get; private set; }

    /// <summary>Work, load and lateness of the last walk, visit price left aside.</summary>
    public double Cost => CostOf(_week, Driving, Wait, Overtime, Late, Stay + Driving + (Count * _charting));

    public static double CostOf(CompiledWeek week, int driving, int wait, int overtime, double late, int busy)
    {
        PlanningRules rules = week.Problem.Rules;
        return driving + wait + ((double)rules.OvertimeFactor * overtime) + late + (Blend.People * busy * busy / rules.Soft.LoadDivisor);
    }

    public void Load(WeekState state, int route)
    {
        Count = state.Visits[route];
        state.OrderOf(route).CopyTo(Order);
        for (int i = 0; i < Count; i++) Starts[i] = state.Start[Order[i]];
    }

    /// <summary>Walks the scratch order; false when it cannot be kept.</summary>
    /// <param name="state">The plan the slots belong to.</param>
    /// <param name="route">The nurse-day.</param>
    /// <param name="from">Starts before this position are known to stay.</param>
    public bool Walk(WeekState state, int route, int from = 0)
    {
        Count = Math.Min(Count, Order.Length);
        if (Count > _week.Routes.Cap[route] && !AllFixed(state)) return false;
        int lunch = _week.Routes.Lunch[route];
        _draws = _drops.DrawsAny(state, route, Order.AsSpan(0, Count));
        if (lunch > 0 || _week.Roads.Varies || _draws) return WalkEveryWay(state, route, lunch);
        if (!Pass(state, route, from, WeekState.None, Starts, int.MinValue)) return false;
        Starts.AsSpan(0, Count).CopyTo(Written);
        if (!Finish(state, route, 0, 0)) return false;
        return Wait == 0 || !Later(state, route, WeekState.None) || Finish(state, route, 0, 0);
    }

    /// <summary>
    /// What decides between places for the break. Driving differs between them only where roads change with the hour or she drives to a drop point; lateness that depends
    /// on another day's care is then left aside, so that the same order is always timed the same way.
    /// </summary>
    private double Choice => _week.Roads.Varies || _draws ? Cost - Late + _ownLate : Cost;

    /// <summary>
    /// Tries every place for the break and keeps the cheapest: before leaving, each gap, the way home, after coming home. Where roads change with the hour each is also
    /// tried with the day begun when slow hours end; where she draws, with time made for a drop point where that adds fewest minutes, after every draw, or
    /// after every run of draws.
    /// </summary>
    private bool WalkEveryWay(WeekState state, int route, int lunch)
    {
        double best = double.PositiveInfinity;
        int bestDriving = 0, bestWait = 0, bestOvertime = 0;
        double bestLate = 0;
        int places = lunch > 0 ? Count : 0;
        for (Making making = Making.NoTime; making <= (_draws ? Making.AfterEveryDraw : Making.NoTime); making++)
        {
            if (!MakeTime(state, route, making)) continue;
            for (int i = 0; i <= places; i++)
            {
                // Nowhere first (the way home and after it need nothing), then the gaps, before leaving home last: at equal cost patients are seen earlier.
                int gap = i == 0 ? WeekState.None : i < Count ? i : 0;
                if (gap > 0 && TooLateForBreak(state, route, gap)) (i, gap) = (Count, 0);
                if (!Pass(state, route, 0, gap, Starts, int.MinValue))
                {
                    // What is too late without a break or a stop is too late with one.
                    if (i == 0 && making == Making.NoTime) return false;
                    continue;
                }

                if (i == 0 && making == Making.NoTime) Starts.AsSpan(0, Count).CopyTo(_early);
                Starts.AsSpan(0, Count).CopyTo(Written);
                bool holds = FinishWithBreak(state, route, lunch);
                if (holds && Choice < best) KeepBest();
                if ((!holds || Wait > 0 || _week.Roads.Varies) && Later(state, route, gap) && FinishWithBreak(state, route, lunch) && Choice < best) KeepBest();
                foreach (int end in _week.Roads.SlowEnds(_week.Routes.Day[route]))
                {
                    if (WaitOut(state, route, gap, end) && FinishWithBreak(state, route, lunch) && Choice < best) KeepBest();
                }

                // A break that costs nothing cannot be beaten, unless it lets slow hours pass or makes time for a drop point.
                if (i == 0 && !_week.Roads.Varies && !_draws && bestWait == 0 && bestOvertime == 0 && !double.IsPositiveInfinity(best)) break;
            }
        }

        if (double.IsPositiveInfinity(best)) return false;
        _best.AsSpan(0, Count).CopyTo(Starts);
        _bestWritten.AsSpan(0, Count).CopyTo(Written);
        (Driving, Wait, Overtime, Late) = (bestDriving, bestWait, bestOvertime, bestLate);
        return true;

        void KeepBest()
        {
            (best, bestDriving, bestWait, bestOvertime, bestLate) = (Choice, Driving, Wait, Overtime, Late);
            Starts.AsSpan(0, Count).CopyTo(_best);
            Written.AsSpan(0, Count).CopyTo(_bestWritten);
        }
    }

    /// <summary>After which visits time for a drop point is made whatever follows; false when that is nothing new.</summary>
    private bool MakeTime(WeekState state, int route, Making making)
    {
        if (!_draws) return making == Making.NoTime;
        if (making == Making.WhereShortest)
        {
            _drops.Read(state, route, Order.AsSpan(0, Count), _early.AsSpan(0, Count), mayPush: true);
            for (int i = 0; i < Count; i++) _via[i] = _drops.Stops[i] ? 1 : 0;
            return true;
        }

        bool runs = false;
        for (int i = 0; i < Count; i++)
        {
            bool draws = _drops.Draws(state, route, Order[i]), follows = draws && i + 1 < Count && _drops.Draws(state, route, Order[i + 1]);
            runs |= follows;
            _via[i] = draws && making != Making.NoTime && (making == Making.AfterEveryDraw || !follows) ? 1 : 0;
        }

        return making != Making.AfterEveryDraw || runs;
    }

    /// <summary>The way to a position from the one before, by a drop point where time is made for one.</summary>
    private int WayTo(int position, int from, int to, int leave) =>
        _draws && position > 0 && _via[position - 1] > 0 ? _drops.Shortest(from, to, leave).Minutes : _week.Roads.Leaving(from, to, leave);

    private int WayBefore(int position, int from, int to, int arrive) => _draws && _via[position] > 0
        ? _drops.Reaching(from, _drops.Shortest(from, to, arrive).Drop, to, arrive)
        : _week.Roads.Reaching(from, to, arrive);

    /// <summary>
    /// Writes the day from its latest first start: the one from which the last visit still starts as early as it can and nobody's care costs more. False when the
    /// first visit cannot move.
    /// </summary>
    private bool Later(WeekState state, int route, int gap)
    {
        if (Count < 2) return false;
        int latest = Starts[Count - 1];
        for (int i = Count - 2; i >= 0; i--)
        {
            int slot = Order[i], on = state.Minutes[slot] + _charting;
            if (gap == i + 1) latest -= _week.Routes.Lunch[route];
            latest -= on + WayBefore(i, _week.Roads.OfPatient(state.Patient[slot]), _week.Roads.OfPatient(state.Patient[Order[i + 1]]), latest);
            if (gap == i + 1) latest = Math.Min(latest, _week.Routes.LunchTo[route] - on);
            latest = state.Pinned[slot] ? Starts[i] : Math.Max(Starts[i], _care.StartBefore(state, slot, Math.Min(latest, _care.SamePointsUntil(state, slot, Starts[i]))));
        }

        return latest > Starts[0] && Pass(state, route, 0, gap, Written, latest);
    }

    /// <summary>Writes the day from a departure when slow hours end. False when she leaves later anyway, or somebody's care would cost more.</summary>
    private bool WaitOut(WeekState state, int route, int gap, int end)
    {
        if (Count == 0 || end <= _week.Routes.From[route]) return false;
        int home = Roads.OfNurse(_week.Routes.Nurse[route]), first = _week.Roads.OfPatient(state.Patient[Order[0]]);
        int arrival = end + _week.Roads.Leaving(home, first, end);
        if (arrival <= Starts[0] || !Pass(state, route, 0, gap, Written, arrival)) return false;
        for (int i = 0; i < Count; i++)
        {
            if (Written[i] > Starts[i] && !state.Pinned[Order[i]] && Written[i] > _care.SamePointsUntil(state, Order[i], Starts[i])) return false;
        }

        return true;
    }

    /// <summary>Without any break the nurse already leaves the visit before the gap after the break's latest start; later gaps are later still.</summary>
    private bool TooLateForBreak(WeekState state, int route, int gap) =>
        _early[gap - 1] + state.Minutes[Order[gap - 1]] + _charting > _week.Routes.LunchTo[route];

    /// <summary>One walk with the break in a gap: 0 before leaving home, i before visit i, Count on the way home, None for nowhere.</summary>
    private bool Pass(WeekState state, int route, int from, int gap, int[] starts, int notBefore)
    {
        Roads roads = _week.Roads;
        int place = Roads.OfNurse(_week.Routes.Nurse[route]), leave = _week.Routes.From[route];
        int lunch = _week.Routes.Lunch[route], lunchFrom = _week.Routes.LunchFrom[route], lunchTo = _week.Routes.LunchTo[route];
        if (gap == 0) leave = Math.Max(leave, lunchFrom + lunch);
        bool allFixed = true;
        for (int i = 0; i < Count; i++)
        {
            int slot = Order[i], next = roads.OfPatient(state.Patient[slot]);
            if (i >= from)
            {
                int arrival = leave + WayTo(i, place, next, leave);
                if (gap == i && i > 0)
                {
                    if (leave > lunchTo) return false;
                    arrival = Math.Max(arrival + lunch, lunchFrom + lunch);
                }

                if (i == 0) arrival = Math.Max(arrival, notBefore);
                allFixed &= state.Fixed[slot];
                int start = state.Pinned[slot] ? Kept(state, slot, arrival, allFixed) : _care.StartAfter(state, slot, arrival, route);
                if (start < 0) return false;
                starts[i] = start;
            }
            else allFixed &= state.Fixed[slot];

            leave = starts[i] + state.Minutes[slot] + _charting;
            place = next;
        }

        return true;
    }

    /// <summary>A pinned start is kept if it can be reached; what is fixed from the morning on is a fact and not checked.</summary>
    private static int Kept(WeekState state, int slot, int arrival, bool allFixed)
    {
        int start = state.Start[slot];
        return arrival <= start || allFixed ? start : -1;
    }

    private bool Finish(WeekState state, int route, int breakInRoute, int breakOnWayHome)
    {
        Roads roads = _week.Roads;
        int home = Roads.OfNurse(_week.Routes.Nurse[route]), place = home, leave = 0;
        (Driving, Wait, Overtime, Stay, Late, _ownLate) = (0, 0, 0, 0, 0, 0);
        if (Count == 0) return true;
        for (int i = 0; i < Count; i++)
        {
            int slot = Order[i], next = roads.OfPatient(state.Patient[slot]);
            int leg = i == 0 ? roads.Reaching(place, next, Written[0]) : roads.Leaving(place, next, leave) + Extra(i - 1);
            Driving += leg;
            if (i > 0) Wait += Math.Max(0, Written[i] - leave - leg);
            Stay += state.Minutes[slot];
            leave = Written[i] + state.Minutes[slot] + _charting;
            place = next;
            if (state.RouteB[slot] == route) continue;
            Late += _care.LateCostAt(state, slot, Starts[i], _week.Routes.Day[route]);
            if (_week.Roads.Varies || _draws) _ownLate += _care.OwnLateCostAt(state, slot, Starts[i]);
        }

        int way = roads.Leaving(place, home, leave) + Extra(Count - 1);
        Driving += way;
        Wait -= breakInRoute;
        int back = leave + way + breakOnWayHome;
        Overtime = Math.Max(0, back - _week.Routes.To[route]);
        return back <= _week.Routes.OvertimeTo[route] || AllFixed(state);
    }

    /// <summary>Places the break by the starts alone, first fit, exactly as a reader of the plan would.</summary>
    private bool FinishWithBreak(WeekState state, int route, int lunch)
    {
        if (_draws && !_drops.Read(state, route, Order.AsSpan(0, Count), Written.AsSpan(0, Count))) return false;
        if (Count == 0 || lunch == 0) return Finish(state, route, 0, 0);
        Roads roads = _week.Roads;
        int home = Roads.OfNurse(_week.Routes.Nurse[route]), first = Order[0], last = Order[Count - 1];
        int departure = Written[0] - roads.Reaching(home, roads.OfPatient(state.Patient[first]), Written[0]);
        if (departure >= _week.Routes.LunchFrom[route] + lunch) return Finish(state, route, 0, 0);
        if (InGap(state, route, lunch)) return Finish(state, route, lunch, 0);
        int leave = Written[Count - 1] + state.Minutes[last] + _charting;
        if (leave + roads.Leaving(roads.OfPatient(state.Patient[last]), home, leave) + Extra(Count - 1) <= _week.Routes.LunchTo[route]) return Finish(state, route, 0, 0);
        bool onWayHome = leave <= _week.Routes.LunchTo[route];
        return Finish(state, route, 0, onWayHome ? lunch : 0) && (onWayHome || AllFixed(state));
    }

    private int Extra(int position) => _draws ? _drops.Extra[position] : 0;

    private bool InGap(WeekState state, int route, int lunch)
    {
        Roads roads = _week.Roads;
        for (int i = 1; i < Count; i++)
        {
            int leave = Written[i - 1] + state.Minutes[Order[i - 1]] + _charting;
            int leg = roads.Leaving(roads.OfPatient(state.Patient[Order[i - 1]]), roads.OfPatient(state.Patient[Order[i]]), leave) + Extra(i - 1);
            if (leave + leg + lunch <= Written[i] && leave <= _week.Routes.LunchTo[route] && Written[i] >= _week.Routes.LunchFrom[route] + lunch)
                return true;
        }

        return false;
    }

    private bool AllFixed(WeekState state)
    {
        for (int i = 0; i < Count; i++)
        {
            if (!state.Fixed[Order[i]]) return false;
        }

        return true;
    }

    /// <summary>After which visits time for a drop point is made.</summary>
    private enum Making
    {
        NoTime,
        WhereShortest,
        AfterEveryRunOfDraws,
        AfterEveryDraw,
    }
}
