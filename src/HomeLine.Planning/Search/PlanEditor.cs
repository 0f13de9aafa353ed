namespace HomeLine.Planning.Search;

/// <summary>Puts units into a plan and takes them out, and keeps every touched nurse-day timed.</summary>
internal sealed class PlanEditor(CompiledWeek week, SlotCare care, RouteTiming timing)
{
    private readonly RouteReach _reach = new(week, care);
    private readonly TouchedSet _untimed = new(week.Routes.Count);
    private readonly Settling _settling = new(week, care);

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
        state.Journal?.Slot(slot);
        state.Journal?.Unit(unit);
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
        else if (proposal.RouteB >= 0) state.Start[slot] = proposal.Start;

        Regather(state, slot);
        RetimeUntimed(state);
    }

    /// <summary>Takes units out; a visit stays when other units are in it. Each touched nurse-day is timed once.</summary>
    public void Remove(WeekState state, ReadOnlySpan<int> units)
    {
        foreach (int unit in units) TakeOut(state, unit);
        RetimeUntimed(state);
    }

    /// <summary>Moves touched two-person visits, and visits held back by a chain, as early as their nurses now allow. Nothing breaks by it.</summary>
    public void Settle(WeekState state) => _settling.Apply(state, this);

    public int MinutesWith(WeekState state, int slot, int route) => state.Setup[slot] + state.Work[slot]
        + week.People.Interpreter[(state.Patient[slot] * week.NurseCount) + week.Routes.Nurse[route]];

    /// <summary>A nurse-day's visits in another order, timed.</summary>
    public void SetOrder(WeekState state, int route, ReadOnlySpan<int> slots)
    {
        state.Journal?.Route(route);
        slots.CopyTo(state.Order.AsSpan(route * state.Width));
        state.Visits[route] = slots.Length;
        Retime(state, route);
    }

    private void TakeOut(WeekState state, int unit)
    {
        int slot = state.UnitSlot[unit];
        if (slot < 0 || state.Fixed[slot]) return;
        Unlink(state, slot, unit);
        if (state.FirstUnit[slot] >= 0)
        {
            Regather(state, slot);
            return;
        }

        _untimed.Add(state.RouteA[slot]);
        if (state.RouteB[slot] >= 0) _untimed.Add(state.RouteB[slot]);
        Vacate(state, slot);
    }

    private void Regather(WeekState state, int slot)
    {
        int a = state.RouteA[slot], b = state.RouteB[slot];
        state.Journal?.Slot(slot);
        care.Gather(state, slot, week.Routes.Day[a]);
        state.Minutes[slot] = MinutesWith(state, slot, a);
        state.Latest[slot] = care.LatestDraw(state, slot, a);
        _untimed.Add(a);
        if (b >= 0) _untimed.Add(b);
    }

    private void RetimeUntimed(WeekState state)
    {
        for (int i = 0; i < _untimed.Count; i++) Retime(state, _untimed.Items[i]);
        _untimed.Clear();
    }

    private void Store(WeekState state, int route)
    {
        state.Journal?.Route(route);
        for (int i = 0; i < timing.Count; i++)
        {
            int slot = timing.Order[i];
            if (state.Start[slot] == timing.Starts[i]) continue;
            state.Journal?.Slot(slot);
            state.Start[slot] = timing.Starts[i];
        }

        state.Figures[route] = new RouteFigures
        {
            Driving = timing.Driving,
            Wait = timing.Wait,
            Overtime = timing.Overtime,
            Stay = timing.Stay,
            Late = timing.Late,
            Cost = timing.Cost,
        };
        _reach.Store(state, route);
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
        if (other >= 0) Retime(state, other);
    }

    private static void Unlink(WeekState state, int slot, int unit)
    {
        state.Journal?.Slot(slot);
        state.Journal?.Unit(unit);
        if (state.FirstUnit[slot] == unit) state.FirstUnit[slot] = state.UnitNext[unit];
        else
        {
            int u = state.FirstUnit[slot];
            while (state.UnitNext[u] != unit) u = state.UnitNext[u];
            state.Journal?.Unit(u);
            state.UnitNext[u] = state.UnitNext[unit];
        }

        state.UnitNext[unit] = WeekState.None;
        state.UnitSlot[unit] = WeekState.None;
    }

    private static void Vacate(WeekState state, int slot)
    {
        state.Journal?.Slot(slot);
        state.TakeFrom(state.RouteA[slot], slot);
        if (state.RouteB[slot] >= 0) state.TakeFrom(state.RouteB[slot], slot);
        state.RouteA[slot] = state.RouteB[slot] = WeekState.None;
        state.Pinned[slot] = false;
    }
}
