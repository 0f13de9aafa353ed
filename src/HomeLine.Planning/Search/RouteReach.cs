using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Works out, once each time a nurse-day is timed, what arriving later at each of its positions would do, so that a new visit is judged in constant time:
/// feasible or not, the return it leads to, and whether anybody's care becomes later in points. Breaks are left aside, and trips take their fewest minutes of
/// any hour: then it is a lower bound.
/// </summary>
internal sealed class RouteReach(CompiledWeek week, SlotCare care)
{
    private const int Never = int.MinValue / 4, Always = int.MaxValue / 4;

    private readonly int _charting = week.Problem.Rules.DocumentationMinutes;

    public void Store(WeekState state, int route)
    {
        int at = route * state.Width, count = state.Visits[route];
        Span<PositionReach> reach = state.Reach.AsSpan(at, count);
        ReadOnlySpan<int> order = state.Order.AsSpan(at, count);
        bool plain = week.Routes.Lunch[route] == 0 && !week.Roads.Varies;
        int home = Roads.OfNurse(week.Routes.Nurse[route]), next = home;
        int latest = week.Routes.OvertimeTo[route], calm = Always, rest = 0, earliest = Never, homeCalm = Always;
        for (int i = count - 1; i >= 0; i--)
        {
            int slot = order[i], here = week.Roads.OfPatient(state.Patient[slot]);
            int on = state.Minutes[slot] + _charting + week.Roads.Minutes(here, next);
            (int from, int to) = Bounds(state, slot, route, ref plain);
            int lastStart = Math.Min(to, latest - on);
            latest = from > lastStart ? Never : lastStart;
            calm = Math.Min(LateStep(state, slot), calm - on);
            rest += on;
            earliest = Math.Max(earliest, from + rest);
            int until = state.Pinned[slot] ? state.Start[slot] : Math.Min(to, care.SamePointsUntil(state, slot, state.Start[slot]));
            homeCalm = Math.Min(homeCalm, until + rest);
            reach[i] = new PositionReach
            {
                Place = here,
                Latest = latest,
                Calm = calm,
                Rest = rest,
                Home = earliest,
                HomeCalm = homeCalm,
                LeaveCalm = until,
            };
            next = here;
        }

        bool draws = false;
        foreach (int slot in order) draws |= week.PlansDrops && state.DrawToDrop[slot] != int.MaxValue;
        state.Figures[route].Draws = draws;
        state.Figures[route].Plain = plain && !draws;
        Leaves(state, route, reach, order);
    }

    /// <summary>Earliest departures without a break; where there is none to take, those of the starts as they are.</summary>
    private void Leaves(WeekState state, int route, Span<PositionReach> reach, ReadOnlySpan<int> order)
    {
        bool breaks = week.Routes.Lunch[route] > 0;
        int leave = week.Routes.From[route], place = Roads.OfNurse(week.Routes.Nurse[route]), calm = Always, driving = 0;
        for (int i = 0; i < order.Length; i++)
        {
            int slot = order[i], here = reach[i].Place, start = state.Start[slot];
            reach[i].Leg = week.Roads.Minutes(place, here);
            driving += reach[i].Leg;
            if (breaks && !state.Pinned[slot])
            {
                ReadOnlySpan<Span> spans = state.Spans[slot];
                start = Math.Min(start, Math.Max(leave + reach[i].Leg, spans.Length == 0 ? Never : spans[0].From));
            }

            leave = start + state.Minutes[slot] + _charting;
            reach[i].Leave = leave;
            calm = Math.Min(calm + reach[i].Leg, reach[i].LeaveCalm) + state.Minutes[slot] + _charting;
            reach[i].LeaveCalm = calm;
            place = here;
        }

        state.Figures[route].LastLeg = order.Length == 0 ? 0 : week.Roads.Minutes(place, Roads.OfNurse(week.Routes.Nurse[route]));
        state.Figures[route].LeastDriving = driving + state.Figures[route].LastLeg;
    }

    private (int From, int To) Bounds(WeekState state, int slot, int route, ref bool plain)
    {
        if (state.Pinned[slot]) return (state.Start[slot], state.Start[slot]);
        ReadOnlySpan<Span> spans = state.Spans[slot];
        if (spans.Length == 0) return (Never, Always);
        int from = spans[0].From, to = Math.Min(spans[^1].To, state.Latest[slot]);
        if (spans.Length > 1) plain = false;
        if (!state.Chained[slot]) return (from, to);
        (int lo, int hi) = care.ChainBounds(state, slot, route);
        return (Math.Max(from, lo), Math.Min(to, hi));
    }

    /// <summary>Last start before the slot's care costs more points than now; care late already, or chained, counts every push.</summary>
    private static int LateStep(WeekState state, int slot)
    {
        int start = state.Start[slot];
        return state.Chained[slot] || start >= state.LateFrom[slot] ? start : state.LateFrom[slot] - 1;
    }
}
