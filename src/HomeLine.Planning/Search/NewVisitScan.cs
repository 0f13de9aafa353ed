using HomeLine.Planning.Cost;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Tries the trial visit at every position of a nurse-day. Each position is judged in constant time from <see cref="PositionReach"/>; only where that is
/// a lower bound (a break, several spans of time, somebody's care becoming late) and promising is the day walked.
/// </summary>
internal sealed class NewVisitScan(CompiledWeek week, SlotCare care, RouteTiming timing)
{
    private const double BlinkRate = 0.01;

    private readonly int _charting = week.Problem.Rules.DocumentationMinutes;
    private readonly PlanningRules _rules = week.Problem.Rules;

    /// <summary>Overlooks a position now and then; empty for never.</summary>
    public SeededChance? Chance { get; set; }

    /// <summary>The best position; nowhere when none is cheaper than <paramref name="beat"/>.</summary>
    public Proposal Best(WeekState state, int slot, int route, double price, double beat)
    {
        int count = state.Visits[route];
        Proposal best = Proposal.Nowhere;
        if (count >= state.Width - 1 || count >= week.Routes.Cap[route]) return best;
        TrialVisit.Set(week, care, state, slot, route);
        (state.RouteA[state.Trial], state.RouteB[state.Trial]) = (route, WeekState.None);
        var at = new Position(state, route, count, week.Roads.OfPatient(state.Patient[state.Trial]), price - state.Figures[route].Cost);
        for (int position = 0; position <= count; position++)
        {
            if (Chance is not null && Chance.NextFraction() < BlinkRate) continue;
            if (Leave(at, position) > care.TrialTo) break;
            double cost = Cost(at, position, Math.Min(beat, best.Cost));
            if (cost < best.Cost && cost < beat) best = new Proposal(cost, slot, route, position);
        }

        return best;
    }

    private int Leave(in Position at, int position) =>
        position == 0 ? week.Routes.From[at.Route] : at.State.Reach[(at.Route * at.State.Width) + position - 1].Leave;

    /// <summary>The change of the blended cost, or infinity when impossible or not below a bound.</summary>
    private double Cost(in Position at, int position, double bound)
    {
        WeekState state = at.State;
        int route = at.Route, trial = state.Trial, row = route * state.Width;
        ref readonly RouteFigures figures = ref state.Figures[route];
        int home = Roads.OfNurse(week.Routes.Nurse[route]);
        int before = position == 0 ? home : Place(state, row + position - 1), after = position == at.Count ? home : Place(state, row + position);
        int there = week.Roads.Minutes(before, at.Here), on = week.Roads.Minutes(at.Here, after);
        int driving = figures.Driving + there + on - (at.Count == 0 ? 0 : week.Roads.Minutes(before, after));
        int stay = figures.Stay + state.Minutes[trial], busy = stay + driving + ((at.Count + 1) * _charting);
        double least = at.Base + driving + figures.Late + Load(busy);
        if (least >= bound) return double.PositiveInfinity;

        int start = care.StartAfter(state, trial, Leave(at, position) + there, route);
        if (start < 0) return double.PositiveInfinity;
        int leave = start + state.Minutes[trial] + _charting, back = leave + on;
        bool exact = figures.Plain;
        if (position == at.Count)
        {
            if (back > week.Routes.OvertimeTo[route]) return double.PositiveInfinity;
        }
        else
        {
            ref readonly PositionReach reach = ref state.Reach[row + position];
            if (back > reach.Latest) return double.PositiveInfinity;
            exact &= back <= reach.Calm;
            back = Math.Max(back + reach.Rest, reach.Home);
        }

        int overtime = Math.Max(0, back - week.Routes.To[route]);
        least += ((double)_rules.OvertimeFactor * overtime) + care.LateCostAt(state, trial, start, week.Routes.Day[route]);
        if (!exact) return least >= bound ? double.PositiveInfinity : Walked(at, position);
        int departure = position == 0 ? start - there : figures.Departure;
        return least + (back - departure - driving - stay - ((at.Count + 1) * _charting));
    }

    private int Place(WeekState state, int index) => week.Roads.OfPatient(state.Patient[state.Order[index]]);

    private double Load(int busy) => Blend.People * busy * busy / _rules.Soft.LoadDivisor;

    private double Walked(in Position at, int position)
    {
        timing.Load(at.State, at.Route);
        for (int i = timing.Count++; i > position; i--) timing.Order[i] = timing.Order[i - 1];
        timing.Order[position] = at.State.Trial;
        return timing.Walk(at.State, at.Route) ? timing.Cost + at.Base : double.PositiveInfinity;
    }

    /// <summary>What stays the same over the positions of a nurse-day.</summary>
    private readonly record struct Position(WeekState State, int Route, int Count, int Here, double Base);
}
