using System.Diagnostics;
using HomeLine.Planning.Cost;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>What the units of a slot ask for together: minutes, starts, separation from the care before and after, lateness.</summary>
internal sealed class SlotCare(CompiledWeek week)
{
    private readonly Span[] _spans = new Span[256];
    private readonly PlanningRules _rules = week.Problem.Rules;
    private readonly DropReach _drops = week.Drops;

    /// <summary>
    /// The slot the trial slot stands in for while a unit is tried in it, so that a chain inside one visit is not taken for two visits.
    /// </summary>
    private int _standsFor = WeekState.None;

    /// <summary>Number of spans of the trial slot, kept in a buffer of its own.</summary>
    public int TrialSpans { get; private set; }

    /// <summary>First allowed start of the trial slot.</summary>
    public int TrialFrom { get; private set; }

    /// <summary>Last allowed start of the trial slot.</summary>
    public int TrialTo { get; private set; }

    /// <summary>Sets the trial slot up as a new visit for a unit, or as an existing slot with the unit added. False when no start is left.</summary>
    public bool SetTrial(WeekState state, int unit, int day, int existing)
    {
        UnitTable units = week.Units;
        int trial = state.Trial, first = existing == WeekState.None ? WeekState.None : state.FirstUnit[existing];
        Debug.Assert(state.UnitSlot[unit] < 0, "a unit that stands in a visit already");
        _standsFor = existing;
        state.UnitNext[unit] = first;
        state.FirstUnit[trial] = unit;
        state.Patient[trial] = units.Patient[unit];
        state.Setup[trial] = Math.Max(units.Setup[unit], first < 0 ? 0 : state.Setup[existing]);
        state.Work[trial] = units.Work[unit] + (first < 0 ? 0 : state.Work[existing]);
        state.DrawToDrop[trial] = Math.Min(units.DrawToDrop[unit], first < 0 ? int.MaxValue : state.DrawToDrop[existing]);
        state.LateFrom[trial] = Math.Min(OwnLateFrom(unit), first < 0 ? int.MaxValue : state.LateFrom[existing]);
        state.Chained[trial] = units.Chained[unit] || (first >= 0 && state.Chained[existing]);
        state.Pinned[trial] = first >= 0 && state.Pinned[existing];
        state.Fixed[trial] = false;
        Span[] own = units.StartSpans[(unit * week.Days) + day];
        ReadOnlySpan<Span> other = first < 0 ? own : state.Spans[existing];
        TrialSpans = SpanSet.Meet(own, other, _spans);
        if (TrialSpans == 0) return false;
        (TrialFrom, TrialTo) = (_spans[0].From, _spans[TrialSpans - 1].To);
        return true;
    }

    public void ClearTrial(WeekState state, int unit)
    {
        _standsFor = WeekState.None;
        state.FirstUnit[state.Trial] = WeekState.None;
        if (state.UnitSlot[unit] < 0) state.UnitNext[unit] = WeekState.None;
    }

    /// <summary>Gathers a slot anew from the units in it.</summary>
    public void Gather(WeekState state, int slot, int day)
    {
        UnitTable units = week.Units;
        int setup = 0, work = 0, draw = int.MaxValue, late = int.MaxValue;
        bool chained = false;
        Span[]? spans = null;
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            setup = Math.Max(setup, units.Setup[u]);
            work += units.Work[u];
            draw = Math.Min(draw, units.DrawToDrop[u]);
            late = Math.Min(late, OwnLateFrom(u));
            chained |= units.Chained[u];
            Span[] own = units.StartSpans[(u * week.Days) + day];
            spans = spans is null ? own : SpanSet.Shared(spans, own, _spans);
        }

        (state.Setup[slot], state.Work[slot], state.DrawToDrop[slot]) = (setup, work, draw);
        (state.LateFrom[slot], state.Chained[slot], state.Spans[slot]) = (late, chained, spans ?? []);
    }

    /// <summary>The first allowed start of a slot at or after an arrival; -1 when there is none.</summary>
    public int StartAfter(WeekState state, int slot, int arrival, int route)
    {
        int earliest = arrival, latest = int.MaxValue;
        if (state.Chained[slot])
        {
            (int lo, int hi) = ChainBounds(state, slot, route);
            earliest = Math.Max(earliest, lo);
            latest = hi;
        }

        ReadOnlySpan<Span> spans = slot == state.Trial ? _spans.AsSpan(0, TrialSpans) : state.Spans[slot];
        latest = Math.Min(latest, state.Latest[slot]);
        int start = SpanSet.NextAllowed(spans, earliest);
        while (start >= 0 && start <= latest && !DrawHolds(state, slot, start)) start = SpanSet.NextAllowed(spans, start + 1);
        return start <= latest ? start : -1;
    }

    /// <summary>The last allowed start of a slot at or before a minute; -1 when there is none.</summary>
    public int StartBefore(WeekState state, int slot, int minute)
    {
        ReadOnlySpan<Span> spans = slot == state.Trial ? _spans.AsSpan(0, TrialSpans) : state.Spans[slot];
        int start = SpanSet.LastAllowed(spans, Math.Min(minute, state.Latest[slot]));
        while (start >= 0 && !DrawHolds(state, slot, start)) start = SpanSet.LastAllowed(spans, start - 1);
        return start;
    }

    /// <summary>
    /// Until when a slot may start without costing more points than at a start, whatever day the care before it in a chain is done on. Care in a chain counted
    /// in minutes does not move at all: others count from it.
    /// </summary>
    public int SamePointsUntil(WeekState state, int slot, int start)
    {
        if (start < state.LateFrom[slot] && !state.Chained[slot]) return state.LateFrom[slot] - 1;
        int until = int.MaxValue;
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            foreach (int task in week.Units.Tasks[u]) until = Math.Min(until, SamePointsUntil(task, start));
        }

        return until;
    }

    /// <summary>Blended cost of the lateness and missed targets of a slot's care at a start.</summary>
    public double LateCostAt(WeekState state, int slot, int start, int day)
    {
        if (start < state.LateFrom[slot] && !state.Chained[slot]) return 0;
        double cost = 0;
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            foreach (int task in week.Units.Tasks[u])
            {
                cost += LateCostOf(task, start, LateFromByChain(state, task));
                if (start > week.Tasks.TargetBy[task]) cost += Blend.Duty * week.Tasks.Weight[task];
                if (slot == state.Trial && u == state.FirstUnit[slot]) cost += FollowersCost(state, task, start, day);
            }
        }

        return cost;
    }

    /// <summary>The same with chains left aside.</summary>
    public double OwnLateCostAt(WeekState state, int slot, int start)
    {
        if (start < state.LateFrom[slot]) return 0;
        double cost = 0;
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            foreach (int task in week.Units.Tasks[u])
                cost += LateCostOf(task, start, week.Tasks.LateFrom[task]) + (start > week.Tasks.TargetBy[task] ? Blend.Duty * week.Tasks.Weight[task] : 0);
        }

        return cost;
    }

    /// <summary>First late minute of a task, the most minutes since the care before included.</summary>
    public int LateFromByChain(WeekState state, int task)
    {
        int before = week.Tasks.Before[task];
        if (before < 0 || week.Tasks.MaxGap[task] == int.MaxValue) return week.Tasks.LateFrom[task];
        int slot = state.UnitSlot[week.Units.OfTask[before]];
        return slot < 0 ? week.Tasks.LateFrom[task] : LateFromAfter(task, state.Start[slot], state.DayOf(slot));
    }

    private double LateCostOf(int task, int start, int lateFrom)
    {
        if (start < lateFrom) return 0;
        long points = LateCost.Late(_rules, week.Tasks.Critical[task], week.Tasks.Weight[task], (long)start - lateFrom);
        return points * week.Tasks.PointPrice[task];
    }

    private int SamePointsUntil(int task, int start)
    {
        if (week.Tasks.TiedByMinutes[task]) return start;
        int step = week.Tasks.Critical[task] ? _rules.CriticalStepMinutes : 1440;
        long late = week.Tasks.LateFrom[task], until = start < late ? late : late + ((((start - late) / step) + 1) * step);
        if (week.Tasks.Before[task] >= 0 && week.Tasks.MaxGap[task] < int.MaxValue)
        {
            // By the chain it is late from some midnight on.
            if (1440 % step != 0) return start;
            until = Math.Min(until, ((start / step) + 1L) * step);
        }

        return (int)Math.Min(until - 1, start <= week.Tasks.TargetBy[task] ? week.Tasks.TargetBy[task] : int.MaxValue);
    }

    private int LateFromAfter(int task, int beforeStart, int beforeDay)
    {
        long byChain = week.Tasks.GapInDays[task]
            ? (beforeDay + week.FirstDay + 1L + (week.Tasks.MaxGap[task] / 1440)) * 1440
            : (long)beforeStart + week.Tasks.MaxGap[task] + 1;
        return (int)Math.Min(week.Tasks.LateFrom[task], byChain);
    }

    /// <summary>What the care that follows would cost in lateness, were this one at that start.</summary>
    private double FollowersCost(WeekState state, int task, int start, int day)
    {
        double cost = 0;
        foreach (int next in week.Tasks.Next[task])
        {
            int slot = state.UnitSlot[week.Units.OfTask[next]];
            if (slot < 0 || week.Tasks.MaxGap[next] == int.MaxValue) continue;
            cost += LateCostOf(next, state.Start[slot], LateFromAfter(next, start, day))
                - LateCostOf(next, state.Start[slot], week.Tasks.LateFrom[next]);
        }

        return cost;
    }

    private int OwnLateFrom(int unit)
    {
        int late = int.MaxValue;
        foreach (int task in week.Units.Tasks[unit])
            late = Math.Min(late, Math.Min(week.Tasks.LateFrom[task], week.Tasks.TargetBy[task]));
        return late;
    }

    /// <summary>Least and most start by the separations from placed care before and after; an empty range when the days forbid it.</summary>
    public (int Lo, int Hi) ChainBounds(WeekState state, int slot, int route)
    {
        int lo = int.MinValue, hi = int.MaxValue, day = week.Routes.Day[route];
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
        {
            foreach (int task in week.Units.Tasks[u])
            {
                if (week.Tasks.Before[task] is >= 0 and var before) Bound(state, slot, before, task, day, true, ref lo, ref hi);
                foreach (int next in week.Tasks.Next[task]) Bound(state, slot, task, next, day, false, ref lo, ref hi);
            }
        }

        return (lo, hi);
    }

    private void Bound(WeekState state, int slot, int before, int after, int day, bool slotIsAfter, ref int lo, ref int hi)
    {
        int other = state.UnitSlot[week.Units.OfTask[slotIsAfter ? before : after]], gap = week.Tasks.MinGap[after];
        if (other < 0)
        {
            bool sameTrial = week.Units.OfTask[before] == week.Units.OfTask[after];
            if (sameTrial && gap > 0) hi = int.MinValue;
            return;
        }

        if (other == slot || (slot == state.Trial && other == _standsFor))
        {
            if (gap > 0) hi = int.MinValue;
        }
        else if (week.Tasks.GapInDays[after])
        {
            int days = slotIsAfter ? day - state.DayOf(other) : state.DayOf(other) - day;
            if (days * 1440 < gap) hi = int.MinValue;
        }
        else if (slotIsAfter) lo = Math.Max(lo, state.Start[other] + gap);
        else hi = Math.Min(hi, state.Start[other] - gap);
    }

    /// <summary>Latest start with the minutes a slot has, from which a drop point is reached in time on the day of a route; -1 when none is.</summary>
    public int LatestDraw(WeekState state, int slot, int route) =>
        _drops.Latest(week.Problem.Patients[state.Patient[slot]].Place, state.DrawToDrop[slot], state.Minutes[slot], week.Routes.Day[route] + week.FirstDay);

    /// <summary>Where roads change with the hour, a specimen may be late from an early start and in time from a later one.</summary>
    private bool DrawHolds(WeekState state, int slot, int start) => !week.Roads.Varies || state.DrawToDrop[slot] == int.MaxValue
        || _drops.Holds(week.Problem.Patients[state.Patient[slot]].Place, state.DrawToDrop[slot], state.Minutes[slot], start);
}
