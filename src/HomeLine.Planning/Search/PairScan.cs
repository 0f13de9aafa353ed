namespace HomeLine.Planning.Search;

/// <summary>
/// Places for two people at the same start: the positions with the shortest detours of either person are paired. Where there are few, that is every pair.
/// </summary>
internal sealed class PairScan(CompiledWeek week, SlotCare care, RouteTiming timing)
{
    private const int Kept = 24;

    private readonly Detours _care = new(Kept), _second = new(Kept);

    public Proposal Best(WeekState state, int unit, int slot, ReadOnlySpan<int> routes, double price, PlacePrice prices, in PlaceFilter filter)
    {
        int patient = week.Units.Patient[unit];
        _care.Clear();
        _second.Clear();
        foreach (int route in routes)
        {
            if (state.Visits[route] >= Math.Min(state.Width - 1, week.Routes.Cap[route])) continue;
            int nurse = week.Routes.Nurse[route];
            if (week.Units.Able(unit, route) && filter.AllowsNurse(nurse) && week.Caps.Allows(state, unit, WeekState.None, route)) Collect(state, slot, route, _care);
            if (week.People.Welcome(patient, nurse)) Collect(state, slot, route, _second);
        }

        Proposal best = Proposal.Nowhere;
        for (int i = 0; i < _care.Count; i++)
        {
            (int a, int positionA, int detourA) = _care[i];
            double own = price + prices.OfNurse(week.Routes.Nurse[a]);
            for (int j = 0; j < _second.Count; j++)
            {
                (int b, int positionB, int detourB) = _second[j];
                if (a == b || own + detourA + detourB - Waiting(state, a, b) >= best.Cost) continue;
                double stands = state.Figures[a].Cost + state.Figures[b].Cost - own;
                Proposal found = Fixed(state, slot, a, b, positionA, positionB, best.Cost + stands, state.Figures[b].Cost + detourB - MayLose(state.Figures[b]));
                double cost = found.Cost - stands;
                if (cost < best.Cost) best = found with { Cost = cost };
            }
        }

        return best;
    }

    /// <summary>The visit at given positions of given nurse-days; its cost is that of the days as they then are.</summary>
    /// <param name="state">The plan.</param>
    /// <param name="slot">The patient's slot of the day.</param>
    /// <param name="a">Nurse-day of the nurse who does the care.</param>
    /// <param name="b">Nurse-day of the second person.</param>
    /// <param name="positionA">Position in the one.</param>
    /// <param name="positionB">Position in the other.</param>
    /// <param name="beat">What costs as much is not looked at further.</param>
    /// <param name="leastOfB">The second person's day costs at least this much then.</param>
    public Proposal Fixed(
        WeekState state, int slot, int a, int b, int positionA, int positionB, double beat = double.PositiveInfinity, double leastOfB = double.NegativeInfinity)
    {
        int trial = state.Trial;
        TrialVisit.Set(week, care, state, slot, a);
        (state.RouteA[trial], state.RouteB[trial]) = (a, b);
        return BestStart(state, new Proposal(0, slot, a, positionA, b, positionB), replaces: false, kept: WeekState.None, beat, leastOfB);
    }

    /// <summary>The trial visit in place of the two-person visit whose care it holds as well, at its start or at another; its cost is that of the days as they then are.</summary>
    public Proposal InPlace(WeekState state, int slot)
    {
        int trial = state.Trial, a = state.RouteA[slot], b = state.RouteB[slot];
        TrialVisit.Set(week, care, state, slot, a);
        (state.RouteA[trial], state.RouteB[trial]) = (a, b);
        return BestStart(state, new Proposal(0, slot, a, state.PositionOf(a, slot), b, state.PositionOf(b, slot)), replaces: true, state.Start[slot]);
    }

    /// <summary>The cheapest of a start that is kept, the first at which both are there, and those at which one or both have had their break by then.</summary>
    private Proposal BestStart(
        WeekState state, in Proposal at, bool replaces, int kept, double beat = double.PositiveInfinity, double leastOfB = double.NegativeInfinity)
    {
        int trial = state.Trial, a = at.RouteA, b = at.RouteB, last = WeekState.None;
        Proposal best = Proposal.Nowhere;
        for (int rested = kept == WeekState.None ? 0 : -1; rested < 4; rested++)
        {
            bool restA = rested > 0 && (rested & 1) != 0, restB = rested > 0 && (rested & 2) != 0;
            if ((restA && week.Routes.Lunch[a] == 0) || (restB && (b < 0 || week.Routes.Lunch[b] == 0)) || (rested > 0 && b < 0)) continue;
            int arrival = rested < 0 ? kept : Math.Max(Arrival(state, a, at.PositionA, restA), b < 0 ? 0 : Arrival(state, b, at.PositionB, restB));
            int start = care.StartAfter(state, trial, arrival, a);
            if (start < 0 || start == last || (rested < 0 && start != kept)) continue;
            state.Start[trial] = last = start;
            state.Pinned[trial] = b >= 0;
            double cost = At(state, a, at.PositionA, replaces);
            bool mayWin = !double.IsInfinity(cost) && cost + leastOfB < Math.Min(beat, best.Cost);
            if (b >= 0) cost = mayWin ? cost + At(state, b, at.PositionB, replaces) : double.PositiveInfinity;
            state.Pinned[trial] = false;
            if (cost < best.Cost) best = at with { Cost = cost, Start = start };
        }

        return best;
    }

    /// <summary>Waiting, lateness and slow driving a day has now and might lose: the most by which walking it can undercut its detour.</summary>
    private static double Waiting(WeekState state, int a, int b) =>
        MayLose(state.Figures[a]) + MayLose(state.Figures[b]);

    private static double MayLose(in RouteFigures figures) => figures.Wait + figures.Late + figures.Driving - figures.LeastDriving;

    private void Collect(WeekState state, int slot, int route, Detours into)
    {
        int count = state.Visits[route], here = week.Roads.OfPatient(week.PatientOf(slot)), home = Roads.OfNurse(week.Routes.Nurse[route]);
        for (int position = 0; position <= count; position++)
        {
            int arrival = Arrival(state, route, position);
            if (arrival > care.TrialTo) continue;
            int at = route * state.Width;
            int before = position == 0 ? home : week.Roads.OfPatient(state.Patient[state.Order[at + position - 1]]);
            int after = position == count ? home : week.Roads.OfPatient(state.Patient[state.Order[at + position]]);
            int leave = Math.Max(arrival, care.TrialFrom) + state.Setup[state.Trial] + state.Work[state.Trial] + week.Problem.Rules.DocumentationMinutes;
            int latest = position == count ? week.Routes.OvertimeTo[route] : state.Reach[at + position].Latest;
            if (leave + week.Roads.Minutes(here, after) > latest) continue;
            int detour = week.Roads.Minutes(before, here) + week.Roads.Minutes(here, after) - (count == 0 ? 0 : week.Roads.Minutes(before, after));
            into.Add(route, position, detour);
        }
    }

    private int Arrival(WeekState state, int route, int position, bool rested = false)
    {
        int here = week.Roads.OfPatient(state.Patient[state.Trial]), lunch = rested ? week.Routes.Lunch[route] : 0, lunchFrom = rested ? week.Routes.LunchFrom[route] : 0;
        int leave = Math.Max(week.Routes.From[route], lunchFrom + lunch);
        if (position == 0) return leave + week.Roads.Leaving(Roads.OfNurse(week.Routes.Nurse[route]), here, leave);
        int last = state.OrderOf(route)[position - 1];
        leave = state.Start[last] + state.Minutes[last] + week.Problem.Rules.DocumentationMinutes;
        int there = leave + week.Roads.Leaving(week.Roads.OfPatient(state.Patient[last]), here, leave);
        return Math.Max(there, lunchFrom) + lunch;
    }

    private double At(WeekState state, int route, int position, bool replaces)
    {
        timing.Load(state, route);
        if (!replaces)
        {
            for (int i = timing.Count++; i > position; i--) timing.Order[i] = timing.Order[i - 1];
        }

        timing.Order[position] = state.Trial;
        return timing.Walk(state, route) ? timing.Cost : double.PositiveInfinity;
    }

    /// <summary>The few shortest detours offered.</summary>
    private sealed class Detours(int kept)
    {
        private readonly (int Route, int Position, int Minutes)[] _items = new (int, int, int)[kept];

        public int Count { get; private set; }

        public (int Route, int Position, int Minutes) this[int index] => _items[index];

        public void Clear() => Count = 0;

        public void Add(int route, int position, int minutes)
        {
            if (Count == kept && minutes >= _items[Count - 1].Minutes) return;
            int at = Count < kept ? Count++ : Count - 1;
            for (; at > 0 && _items[at - 1].Minutes > minutes; at--) _items[at] = _items[at - 1];
            _items[at] = (route, position, minutes);
        }
    }
}
