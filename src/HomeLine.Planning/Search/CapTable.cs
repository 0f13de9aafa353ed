namespace HomeLine.Planning.Search;

/// <summary>How many visits of a kind each nurse makes in a day or a week. Counted only where a capped nurse meets care of the kind, which is seldom.</summary>
internal sealed class CapTable
{
    private readonly CompiledWeek _week;
    private readonly (ulong Kind, int Most, bool AWeek)[][] _caps;
    private readonly ulong[] _ofUnit;

    public CapTable(CompiledWeek week)
    {
        _week = week;
        string[] kinds = [.. week.Problem.Nurses.SelectMany(n => n.Caps).Select(c => c.Kind).Distinct(StringComparer.Ordinal)];
        if (kinds.Length > 64) throw new ArgumentException("More than 64 kinds of visit have a cap.", nameof(week));
        _caps = [.. week.Problem.Nurses.Select(n => n.Caps.Select(c => (Bit(c.Kind), c.Most, c.AWeek)).ToArray())];
        _ofUnit = kinds.Length == 0 ? [] : [.. week.Units.Tasks.Select(ts => ts.SelectMany(t => week.Problem.Tasks[t].Kinds).Aggregate(0UL, (all, k) => all | Bit(k)))];

        ulong Bit(string kind) => Array.IndexOf(kinds, kind) is var at and >= 0 ? 1UL << at : 0;
    }

    /// <summary>Whether a nurse-day may take a unit, as a visit of its own or in the visit of a slot.</summary>
    public bool Allows(WeekState state, int unit, int slot, int route)
    {
        if (_ofUnit.Length == 0 || _ofUnit[unit] == 0) return true;
        ulong had = slot < 0 ? 0 : KindsOf(state, slot);
        foreach (var (kind, most, aWeek) in _caps[_week.Routes.Nurse[route]])
        {
            if ((_ofUnit[unit] & kind) != 0 && (had & kind) == 0 && Count(state, route, kind, aWeek) >= most) return false;
        }

        return true;
    }

    /// <summary>Whether a nurse-day may take all the visits of another, on the same day, in place of its own.</summary>
    public bool AllowsAll(WeekState state, int from, int to)
    {
        if (_ofUnit.Length == 0) return true;
        foreach (var (kind, most, aWeek) in _caps[_week.Routes.Nurse[to]])
        {
            int coming = OnRoute(state, from, kind);
            if (coming > 0 && coming + (aWeek ? Count(state, to, kind, true) - OnRoute(state, to, kind) : 0) > most) return false;
        }

        return true;
    }

    /// <summary>Whether no nurse has more than she takes by visits that the search put there.</summary>
    public bool Hold(WeekState state)
    {
        for (int r = 0; r < _week.Routes.Count && _ofUnit.Length > 0; r++)
        {
            foreach (var (kind, most, aWeek) in _caps[_week.Routes.Nurse[r]])
            {
                if (OnRoute(state, r, kind, movableOnly: true) > 0 && Count(state, r, kind, aWeek) > most) return false;
            }
        }

        return true;
    }

    private int Count(WeekState state, int route, ulong kind, bool aWeek)
    {
        if (!aWeek) return OnRoute(state, route, kind);
        int nurse = _week.Routes.Nurse[route], monday = (_week.Routes.Day[route] + _week.FirstDay) / 7 * 7, count = 0;
        if (_week.Routes.Day[route] + _week.FirstDay < 0) monday -= 7;
        for (int day = monday; day < monday + 7; day++)
        {
            int of = _week.Routes.Find(nurse, day - _week.FirstDay);
            if (of >= 0) count += OnRoute(state, of, kind);
        }

        return count;
    }

    private int OnRoute(WeekState state, int route, ulong kind, bool movableOnly = false)
    {
        int count = 0;
        foreach (int slot in state.OrderOf(route))
        {
            if (state.RouteA[slot] == route && (KindsOf(state, slot) & kind) != 0 && !(movableOnly && state.Fixed[slot])) count++;
        }

        return count;
    }

    private ulong KindsOf(WeekState state, int slot)
    {
        ulong kinds = 0;
        for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u]) kinds |= _ofUnit[u];
        return kinds;
    }
}
