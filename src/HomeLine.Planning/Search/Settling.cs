namespace HomeLine.Planning.Search;

/// <summary>
/// After visits were taken out, two-person visits and visits a chain held back may start earlier. Only nurse-days touched in the round can have changed
/// that, so only their visits, and those that follow them in a chain, are looked at.
/// </summary>
internal sealed class Settling(CompiledWeek week, SlotCare care)
{
    private readonly TouchedSet _slots = new((week.PatientCount * week.Days) + week.FixedVisits.Length + 1);

    public void Apply(WeekState state, PlanEditor editor)
    {
        if (week.NothingToSettle) return;
        for (int round = 0; round < 3; round++)
        {
            Collect(state);
            bool moved = false;
            foreach (int slot in _slots.Items)
            {
                if (state.RouteA[slot] < 0 || state.Fixed[slot]) continue;
                if (state.RouteB[slot] >= 0) moved |= PullEarlier(state, slot, editor);
                else if (state.Chained[slot] && HeldBack(state, slot)) moved |= RetimeMoves(state, slot, editor);
            }

            if (!moved) return;
        }
    }

    private void Collect(WeekState state)
    {
        _slots.Clear();
        if (state.Journal is null)
        {
            for (int route = 0; route < week.Routes.Count; route++) Collect(state, route);
        }
        else
        {
            foreach (int route in state.Journal.Routes.Items) Collect(state, route);

            // What was taken out and found no place holds nobody back any more.
            foreach (int unit in state.Journal.Units.Items)
            {
                if (state.UnitSlot[unit] < 0) CollectFollowers(state, unit);
            }
        }
    }

    private void Collect(WeekState state, int route)
    {
        foreach (int slot in state.OrderOf(route))
        {
            if (state.RouteB[slot] >= 0) _slots.Add(slot);
            if (!state.Chained[slot]) continue;
            _slots.Add(slot);
            for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u]) CollectFollowers(state, u);
        }
    }

    private void CollectFollowers(WeekState state, int unit)
    {
        foreach (int task in week.Units.Tasks[unit])
        {
            foreach (int next in week.Tasks.Next[task])
            {
                int follower = state.UnitSlot[week.Units.OfTask[next]];
                if (follower >= 0) _slots.Add(follower);
            }
        }
    }

    private bool HeldBack(WeekState state, int slot)
    {
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            if (week.Units.HeldBack[u]) return true;
        }

        return false;
    }

    private static bool RetimeMoves(WeekState state, int slot, PlanEditor editor)
    {
        int before = state.Start[slot];
        editor.Retime(state, state.RouteA[slot]);
        return state.RouteA[slot] < 0 || state.Start[slot] != before;
    }

    private bool PullEarlier(WeekState state, int slot, PlanEditor editor)
    {
        int start = EarliestForBoth(state, slot);
        if (start < 0 || start >= state.Start[slot]) return false;
        state.Journal?.Slot(slot);
        state.Start[slot] = start;
        editor.Retime(state, state.RouteA[slot]);
        editor.Retime(state, state.RouteB[slot]);
        return true;
    }

    private int EarliestForBoth(WeekState state, int slot)
    {
        int arrival = Math.Max(Arrival(state, state.RouteA[slot], slot), Arrival(state, state.RouteB[slot], slot));
        return care.StartAfter(state, slot, arrival, state.RouteA[slot]);
    }

    private int Arrival(WeekState state, int route, int slot)
    {
        Roads roads = week.Roads;
        int position = state.PositionOf(route, slot), here = roads.OfPatient(state.Patient[slot]);

        // A break, or a drop point, may stand in any gap before; where a nurse-day has one, its pinned visits keep their start.
        if (week.Routes.Lunch[route] > 0 || state.Figures[route].Draws) return state.Start[slot];
        int leave = week.Routes.From[route];
        if (position == 0) return leave + roads.Leaving(Roads.OfNurse(week.Routes.Nurse[route]), here, leave);
        int last = state.OrderOf(route)[position - 1];
        leave = state.Start[last] + state.Minutes[last] + week.Problem.Rules.DocumentationMinutes;
        return leave + roads.Leaving(roads.OfPatient(state.Patient[last]), here, leave);
    }
}
