namespace HomeLine.Planning.Search;

/// <summary>
/// The nurse-days of a day worth trying for a patient: all of them when they are few; else those that already pass near her home, and those of nurses who
/// live near or whom she knows.
/// </summary>
internal sealed class NearRoutes(CompiledWeek week)
{
    /// <summary>Up to so many open nurse-days on a day, all are tried.</summary>
    private const int Few = 20;

    private const int NeighboursAsked = 20;

    private readonly int[] _found = new int[week.Routes.Count];
    private readonly int[] _round = new int[week.Routes.Count];
    private int _now;

    /// <summary>Whether anybody is ever left out in a week.</summary>
    public static bool LeavesOut(CompiledWeek week) => week.Routes.OfDay.Any(o => o.Length > Few);

    /// <summary>Leaves nobody out, near or far.</summary>
    public bool Everybody { get; set; }

    public ReadOnlySpan<int> On(WeekState state, int patient, int day)
    {
        int[] open = week.Routes.OfDay[day];
        if (Everybody || open.Length <= Few) return open;
        _now++;
        int count = 0;
        ReadOnlySpan<int> near = week.People.Nearest[patient];
        for (int i = 0; i < Math.Min(near.Length, NeighboursAsked); i++)
        {
            int slot = week.Slot(near[i], day);
            count = Add(state.RouteA[slot], count);
            count = Add(state.RouteB[slot], count);
        }

        foreach (int nurse in week.People.NearNurses[patient]) count = Add(week.Routes.Find(nurse, day), count);
        return _found.AsSpan(0, count);
    }

    private int Add(int route, int count)
    {
        if (route < 0 || _round[route] == _now || !week.Routes.Open[route]) return count;
        _round[route] = _now;
        _found[count] = route;
        return count + 1;
    }
}
