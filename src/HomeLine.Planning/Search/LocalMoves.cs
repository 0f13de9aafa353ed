using HomeLine.Planning.Search.Ruins;

namespace HomeLine.Planning.Search;

/// <summary>
/// Moves that ruin and recreate finds only by luck: a visit to another day, the care of one visit into the patient's others, a patient's week to one
/// nurse, two nurse-days exchanged. Each takes out what it moves and puts it back under a filter; what finds no place is left to the recreate step.
/// </summary>
internal sealed class LocalMoves(CompiledWeek week, SlotCare care, Insertion insertion, PlanEditor editor, RuinPick pick)
{
    private readonly int[] _mine = new int[64];
    private readonly int[] _theirs = new int[64];

    /// <summary>False when the move cannot be made and the round is to be taken back.</summary>
    public bool Apply(WeekState state, SeededChance chance)
    {
        pick.Begin(int.MaxValue);
        switch (chance.Next(10))
        {
            case < 3: return ToAnotherDay(state, chance);
            case < 5: return IntoTheOthers(state, chance);
            case < 8: return ToOneNurse(state, chance);
            default: return ExchangeDays(state, chance);
        }
    }

    private bool ToAnotherDay(WeekState state, SeededChance chance)
    {
        int slot = AnyVisit(state, chance);
        if (slot < 0 || state.Fixed[slot]) return false;
        PlaceFilter filter = PlaceFilter.Any with { NotDay = state.DayOf(slot) };
        pick.Slot(state, slot);
        return Move(state, filter);
    }

    private bool IntoTheOthers(WeekState state, SeededChance chance)
    {
        int slot = AnyVisit(state, chance);
        if (slot < 0 || state.Fixed[slot]) return false;
        pick.Slot(state, slot);
        return Move(state, PlaceFilter.Any with { JoinOnly = true });
    }

    private bool ToOneNurse(WeekState state, SeededChance chance)
    {
        int patient = chance.Next(week.PatientCount), visits = 0, met = 0;
        int[] nurses = week.People.NearNurses[patient];
        if (nurses.Length == 0) return false;
        int nurse = nurses[Math.Min(chance.Next(nurses.Length), chance.Next(nurses.Length))];
        for (int day = 0; day < week.Days; day++)
        {
            int slot = week.Slot(patient, day);
            if (state.RouteA[slot] < 0) continue;
            visits++;
            if (week.Routes.Nurse[state.RouteA[slot]] == nurse) met++;
            pick.Slot(state, slot);
        }

        return visits > met && Move(state, PlaceFilter.Any with { OnlyNurse = nurse });
    }

    private bool Move(WeekState state, PlaceFilter filter)
    {
        editor.Remove(state, pick.Units);
        insertion.Filter = filter;
        foreach (int unit in pick.Units)
        {
            Proposal place = insertion.Best(state, unit);
            if (place.Cost < 0) editor.Insert(state, unit, place);
        }

        insertion.Filter = PlaceFilter.Any;
        return true;
    }

    /// <summary>Two nurses of one day take each other's visits, each keeping the order, if both days can be kept.</summary>
    private bool ExchangeDays(WeekState state, SeededChance chance)
    {
        int a = chance.Next(week.Routes.Count), b = Partner(state, a, chance);
        if (b < 0 || a == b || state.Visits[a] > _mine.Length || state.Visits[b] > _theirs.Length) return false;
        if (!MayTake(state, a, b) || !MayTake(state, b, a) || !week.Caps.AllowsAll(state, a, b) || !week.Caps.AllowsAll(state, b, a)) return false;
        Span<int> mine = _mine.AsSpan(0, state.Visits[a]), theirs = _theirs.AsSpan(0, state.Visits[b]);
        state.OrderOf(a).CopyTo(mine);
        state.OrderOf(b).CopyTo(theirs);
        Give(state, mine, a, b);
        Give(state, theirs, b, a);
        return editor.Holds(state, a) && editor.Holds(state, b) && Timed(state, a, b);
    }

    private bool Timed(WeekState state, int a, int b)
    {
        editor.Retime(state, a);
        editor.Retime(state, b);
        return true;
    }

    private void Give(WeekState state, ReadOnlySpan<int> slots, int from, int to)
    {
        state.Journal?.Route(from);
        state.Journal?.Route(to);
        foreach (int slot in slots)
        {
            state.Journal?.Slot(slot);
            state.RouteA[slot] = to;
            state.Minutes[slot] = editor.MinutesWith(state, slot, to);
            state.Latest[slot] = care.LatestDraw(state, slot, to);
        }

        slots.CopyTo(state.Order.AsSpan(to * state.Width));
        state.Visits[to] = slots.Length;
    }

    private bool MayTake(WeekState state, int from, int to)
    {
        if (!week.Routes.Open[to] || state.Visits[from] > Math.Min(week.Routes.Cap[to], state.Width - 1)) return false;
        foreach (int slot in state.OrderOf(from))
        {
            if (state.Pinned[slot]) return false;
            for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
            {
                if (!week.Units.Able(u, to)) return false;
            }
        }

        return true;
    }

    private int Partner(WeekState state, int route, SeededChance chance)
    {
        int[] same = week.Routes.OfDay[week.Routes.Day[route]];
        if (state.Visits[route] == 0 || same.Length < 2) return -1;
        int[] nurses = week.People.NearNurses[state.Patient[state.OrderOf(route)[chance.Next(state.Visits[route])]]];
        int near = week.Routes.Find(nurses[chance.Next(nurses.Length)], week.Routes.Day[route]);
        return near >= 0 ? near : same[chance.Next(same.Length)];
    }

    private int AnyVisit(WeekState state, SeededChance chance)
    {
        int route = chance.Next(week.Routes.Count);
        return state.Visits[route] == 0 ? -1 : state.OrderOf(route)[chance.Next(state.Visits[route])];
    }
}
