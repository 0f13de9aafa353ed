namespace HomeLine.Planning.Search;

/// <summary>Puts units into a plan and takes them out, and keeps every touched nurse-day timed.</summary>
internal sealed class PlanEditor(CompiledWeek week, SlotCare care, RouteTiming timing)
{
    /// <summary>Times a route anew and stores what was found. A route that no longer holds (odd travel times) loses visits until it does.</summary>
    public void Retime(WeekState state, int route)
    {
        while (true)
        {
            timing.Load(state, route);
            if (timing.Walk(state, route)) break;
            int drop = LastFree(state, route);
            if (drop < 0) break;
            Clear(state, drop, route);
        }

        Store(state, route);
    }

    /// <summary>Whether a route holds as it stands.</summary>
    public bool Holds(WeekState state, int route)
    {
        timing.Load(state, route);
        return timing.Walk(state, route);
    }

    /// <summary>Puts a unit where a proposal says.</summary>
    public void Insert(WeekState state, int unit, in Proposal proposal)
    {
        int slot = proposal.Slot;
        bool isNew = state.FirstUnit[slot] < 0;
        state.UnitNext[unit] = state.FirstUnit[slot];
        state.FirstUnit[slot] = unit;
        state.UnitSlot[unit] = slot;
        if (isNew)
        {
            state.RouteA[slot] = proposal.RouteA;
            state.RouteB[slot] = proposal.RouteB;
            state.Pinned[slot] = proposal.RouteB >= 0;
            state.Start[slot] = proposal.Start;
            state.PutAt(proposal.RouteA, proposal.PositionA, slot);
            if (proposal.RouteB >= 0) state.PutAt(proposal.RouteB, proposal.PositionB, slot);
        }

        Refresh(state, slot);
    }

    /// <summary>Takes a unit out; its visit stays when other units are in it.</summary>
    public void Remove(WeekState state, int unit)
    {
        int slot = state.UnitSlot[unit];
        if (slot < 0 || state.Fixed[slot]) return;
        Unlink(state, slot, unit);
        if (state.FirstUnit[slot] >= 0)
        {
            Refresh(state, slot);
            return;
        }

        (int a, int b) = (state.RouteA[slot], state.RouteB[slot]);
        Vacate(state, slot);
        Retime(state, a);
        if (b >= 0) Retime(state, b);
    }

    /// <summary>
    /// Moves two-person visits, and visits held back by a chain, as early as their nurses now allow. Everything only moves earlier, so nothing breaks.
    /// </summary>
    public void Settle(WeekState state)
    {
        for (int round = 0; round < 3; round++)
        {
            bool moved = false;
            for (int slot = 0; slot < state.Trial; slot++)
            {
                if (state.RouteA[slot] < 0 || state.Fixed[slot]) continue;
                if (state.RouteB[slot] >= 0) moved |= PullEarlier(state, slot);
                else if (state.Chained[slot] && HeldBack(state, slot)) moved |= RetimeMoves(state, slot);
            }

            if (!moved) return;
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

    private bool RetimeMoves(WeekState state, int slot)
    {
        int before = state.Start[slot];
        Retime(state, state.RouteA[slot]);
        return state.RouteA[slot] < 0 || state.Start[slot] != before;
    }

    private bool PullEarlier(WeekState state, int slot)
    {
        int start = EarliestForBoth(state, slot);
        if (start < 0 || start >= state.Start[slot]) return false;
        state.Start[slot] = start;
        Retime(state, state.RouteA[slot]);
        Retime(state, state.RouteB[slot]);
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

        // A break may stand in any gap before; where a nurse-day has one, its pinned visits keep their start.
        if (week.Routes.Lunch[route] > 0) return state.Start[slot];
        if (position == 0) return week.Routes.From[route] + roads.Minutes(Roads.OfNurse(week.Routes.Nurse[route]), here);
        int last = state.OrderOf(route)[position - 1];
        return state.Start[last] + state.Minutes[last] + week.Problem.Rules.DocumentationMinutes
            + roads.Minutes(roads.OfPatient(state.Patient[last]), here);
    }

    private void Refresh(WeekState state, int slot)
    {
        int a = state.RouteA[slot], b = state.RouteB[slot];
        care.Gather(state, slot, week.Routes.Day[a]);
        state.Minutes[slot] = MinutesWith(state, slot, a);
        Retime(state, a);
        if (b >= 0 && state.RouteB[slot] == b) Retime(state, b);
    }

    public int MinutesWith(WeekState state, int slot, int route) => state.Setup[slot] + state.Work[slot]
        + week.People.Interpreter[(state.Patient[slot] * week.NurseCount) + week.Routes.Nurse[route]];

    private void Store(WeekState state, int route)
    {
        for (int i = 0; i < timing.Count; i++) state.Start[timing.Order[i]] = timing.Starts[i];
        (state.Driving[route], state.Wait[route], state.Overtime[route]) = (timing.Driving, timing.Wait, timing.Overtime);
        (state.Stay[route], state.Late[route]) = (timing.Stay, timing.Late);
    }

    private static int LastFree(WeekState state, int route)
    {
        Span<int> order = state.OrderOf(route);
        for (int i = order.Length - 1; i >= 0; i--)
        {
            if (!state.Fixed[order[i]]) return order[i];
        }

        return WeekState.None;
    }

    private void Clear(WeekState state, int slot, int retiming)
    {
        while (state.FirstUnit[slot] >= 0) Unlink(state, slot, state.FirstUnit[slot]);
        int other = state.RouteA[slot] == retiming ? state.RouteB[slot] : state.RouteA[slot];
        Vacate(state, slot);
        if (other >= 0)
        {
            Retime(state, other);
        }
    }

    private static void Unlink(WeekState state, int slot, int unit)
    {
        if (state.FirstUnit[slot] == unit) state.FirstUnit[slot] = state.UnitNext[unit];
        else
        {
            int u = state.FirstUnit[slot];
            while (state.UnitNext[u] != unit) u = state.UnitNext[u];
            state.UnitNext[u] = state.UnitNext[unit];
        }

        state.UnitNext[unit] = WeekState.None;
        state.UnitSlot[unit] = WeekState.None;
    }

    private static void Vacate(WeekState state, int slot)
    {
        state.TakeFrom(state.RouteA[slot], slot);
        if (state.RouteB[slot] >= 0) state.TakeFrom(state.RouteB[slot], slot);
        state.RouteA[slot] = state.RouteB[slot] = WeekState.None;
        state.Pinned[slot] = false;
    }
}
