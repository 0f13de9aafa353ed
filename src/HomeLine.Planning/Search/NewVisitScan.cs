using HomeLine.Planning.Cost;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Tries the trial visit at every position of the nurse-days of one day. Each position is judged in constant time from <see cref="PositionReach"/>. Where that
/// is only a lower bound (a break, roads that change with the hour, several spans of time, somebody's care becoming late) the position waits, and the day is walked only if the bound still
/// beats the best place known when its turn comes, smallest bound first.
/// </summary>
internal sealed class NewVisitScan(CompiledWeek week, SlotCare care, RouteTiming timing)
{
    private const double BlinkRate = 0.01;

    private readonly int _charting = week.Problem.Rules.DocumentationMinutes;
    private readonly PlanningRules _rules = week.Problem.Rules;
    private Waiting[] _waiting = new Waiting[256];
    private int _count;

    /// <summary>Overlooks a position now and then; empty for never.</summary>
    public SeededChance? Chance { get; set; }

    /// <summary>Positions that wait to be walked.</summary>
    public bool HasWaiting => _count > 0;

    public void Begin() => _count = 0;

    /// <summary>The best position of a nurse-day among those judged at once; nowhere when none is cheaper than <paramref name="beat"/>.</summary>
    public Proposal Scan(WeekState state, int slot, int route, double price, double beat)
    {
        int count = state.Visits[route];
        Proposal best = Proposal.Nowhere;
        if (count >= state.Width - 1 || count >= week.Routes.Cap[route]) return best;
        TrialVisit.Set(week, care, state, slot, route);
        (state.RouteA[state.Trial], state.RouteB[state.Trial]) = (route, WeekState.None);
        var at = new Day(state, route, count, week.Roads.OfPatient(state.Patient[state.Trial]), price - state.Figures[route].Cost);
        for (int position = 0; position <= count; position++)
        {
            if (Chance is not null && Chance.NextFraction() < BlinkRate) continue;
            if (Leave(at, position) > care.TrialTo) break;
            double cost = Cost(at, position, Math.Min(beat, best.Cost), out bool exact);
            if (cost >= best.Cost || cost >= beat) continue;
            if (exact) best = new Proposal(cost, slot, route, position);
            else Wait(cost, at, position);
        }

        return best;
    }

    /// <summary>Walks the waiting position with the smallest bound; nowhere when that bound, and so every other, no longer beats the best.</summary>
    public Proposal WalkNext(WeekState state, int slot, double beat)
    {
        int least = 0;
        for (int i = 1; i < _count; i++)
        {
            if (_waiting[i].Bound < _waiting[least].Bound) least = i;
        }

        Waiting next = _waiting[least];
        _waiting[least] = _waiting[--_count];
        if (next.Bound >= beat)
        {
            _count = 0;
            return Proposal.Nowhere;
        }

        TrialVisit.Set(week, care, state, slot, next.Route);
        (state.RouteA[state.Trial], state.RouteB[state.Trial]) = (next.Route, WeekState.None);
        double cost = Walked(state, next.Route, next.Position, next.Base);
        return cost < beat ? new Proposal(cost, slot, next.Route, next.Position) : Proposal.Nowhere;
    }

    private void Wait(double bound, in Day at, int position)
    {
        if (_count == _waiting.Length) Array.Resize(ref _waiting, 2 * _count);
        _waiting[_count++] = new Waiting(bound, at.Route, position, at.Base);
    }

    private int Leave(in Day at, int position) =>
        position == 0 ? week.Routes.From[at.Route] : at.State.Reach[(at.Route * at.State.Width) + position - 1].Leave;

    private static int LeaveCalm(in Day at, int position) =>
        position == 0 ? int.MaxValue / 4 : at.State.Reach[(at.Route * at.State.Width) + position - 1].LeaveCalm;

    /// <summary>The change of the blended cost or a lower bound of it; infinity when impossible or not below a bound.</summary>
    private double Cost(in Day at, int position, double bound, out bool exact)
    {
        exact = false;
        WeekState state = at.State;
        int route = at.Route, trial = state.Trial, row = route * state.Width, home = Roads.OfNurse(week.Routes.Nurse[route]);
        ref readonly RouteFigures figures = ref state.Figures[route];
        int before = position == 0 ? home : state.Reach[row + position - 1].Place, after = position == at.Count ? home : state.Reach[row + position].Place;
        int there = week.Roads.Into(at.Here, before), on = week.Roads.Minutes(at.Here, after);
        int straight = at.Count == 0 ? 0 : position == at.Count ? figures.LastLeg : state.Reach[row + position].Leg;
        int driving = figures.LeastDriving + there + on - straight, stay = figures.Stay + state.Minutes[trial], busy = stay + driving + ((at.Count + 1) * _charting);
        double least = at.Base + driving + figures.Late + (Blend.People * busy * busy / _rules.Soft.LoadDivisor);
        if (least >= bound) return double.PositiveInfinity;

        int start = Start(state, Leave(at, position) + there, route);
        if (start < 0) return double.PositiveInfinity;
        int onwards = state.Minutes[trial] + _charting + on, back = start + onwards;
        int calm = Math.Min(LeaveCalm(at, position) + there, Math.Min(Math.Min(care.TrialTo, state.Latest[trial]), care.SamePointsUntil(state, trial, start))) + onwards;
        bool draws = week.PlansDrops && (figures.Draws || state.DrawToDrop[trial] != int.MaxValue);
        exact = figures.Plain && !draws;
        if (position < at.Count)
        {
            ref readonly PositionReach reach = ref state.Reach[row + position];
            if (back > reach.Latest) return double.PositiveInfinity;
            exact &= back <= reach.Calm;
            back = Math.Max(back + reach.Rest, reach.Home);
            calm = Math.Min(calm + reach.Rest, reach.HomeCalm);
        }
        else if (back > week.Routes.OvertimeTo[route]) return double.PositiveInfinity;

        int wait = Math.Max(0, back - calm), departure = back - wait - busy;
        least += care.LateCostAt(state, trial, start, week.Routes.Day[route]);
        return least + (exact ? wait + Overtime(back, route) : draws ? Overtime(back, route) : LeastWithBreak(route, departure, back, wait));
    }

    /// <summary>
    /// Least waiting and overtime of a day with a break: what waiting the break cannot fill is paid, and a break that can be neither before leaving nor after
    /// coming home takes what waiting does not give it. Where roads change with the hour nothing is known of waiting; nor where she drives to a drop point.
    /// </summary>
    private double LeastWithBreak(int route, int departure, int back, int wait)
    {
        if (week.Roads.Varies) return Overtime(back, route);
        int lunch = week.Routes.Lunch[route], paid = Math.Max(0, wait - lunch);
        bool inside = lunch > 0 && departure < week.Routes.LunchFrom[route] + lunch && back > week.Routes.LunchTo[route];
        return paid + Overtime(inside ? back + Math.Max(0, lunch - Math.Max(0, wait)) : back, route);
    }

    private double Overtime(int back, int route) => (double)_rules.OvertimeFactor * Math.Max(0, back - week.Routes.To[route]);

    /// <summary>First allowed start at or after an arrival: at once where one span and no chain decides.</summary>
    private int Start(WeekState state, int arrival, int route)
    {
        if (care.TrialSpans > 1 || state.Chained[state.Trial]) return care.StartAfter(state, state.Trial, arrival, route);
        int start = Math.Max(arrival, care.TrialFrom);
        return start > care.TrialTo || start > state.Latest[state.Trial] ? -1 : start;
    }

    private double Walked(WeekState state, int route, int position, double basis)
    {
        timing.Load(state, route);
        for (int i = timing.Count++; i > position; i--) timing.Order[i] = timing.Order[i - 1];
        timing.Order[position] = state.Trial;
        return timing.Walk(state, route) ? timing.Cost + basis : double.PositiveInfinity;
    }

    /// <summary>What stays the same over the positions of a nurse-day.</summary>
    private readonly record struct Day(WeekState State, int Route, int Count, int Here, double Base);

    /// <summary>A position whose cost is not known yet.</summary>
    private readonly record struct Waiting(double Bound, int Route, int Position, double Base);
}
