namespace HomeLine.Planning.Search.Polishing;

/// <summary>
/// Puts nurse-days the search has seen at different times together into one plan. Days tied to others (two people, fixed visits, chains counted in minutes)
/// stay as they are, and chained care keeps its day, so that what the choice cannot see cannot break.
/// </summary>
internal sealed class Polish(CompiledWeek week, PlanEditor editor)
{
    private const int MostColumns = 12_000;
    private const double WorkPerThousandColumns = 0.25, MostWork = 3;

    private readonly CoverModel _model = new(week);

    /// <summary>Changes a plan into a cheaper choice of nurse-days; false when there is none. The caller judges by the exact score.</summary>
    public bool Apply(WeekState state, RoutePool pool, CancellationToken cancel)
    {
        RouteColumn[] standing = [.. Enumerable.Range(0, week.Routes.Count).Where(r => IsFree(state, r)).Select(r => pool.ColumnOf(state, r))];
        var routes = standing.Select(c => c.Route).ToHashSet();
        for (int r = 0; r < week.Routes.Count; r++)
        {
            if (state.Visits[r] == 0 && week.Routes.Open[r]) routes.Add(r);
        }

        var keys = standing.Select(c => c.Key).ToHashSet();
        RouteColumn[] seen = Chosen([.. pool.Columns.Where(c => routes.Contains(c.Route) && !keys.Contains(c.Key) && c.Units.All(u => Fits(state, c, u, routes)))], standing);
        if (seen.Length == 0 || cancel.IsCancellationRequested) return false;
        RouteColumn[] columns = [.. standing, .. seen];
        IReadOnlyList<RouteColumn>? chosen = _model.Choose(
            columns, standing.ToHashSet(), Worth(state, columns), Math.Min(MostWork, WorkPerThousandColumns * columns.Length / 1_000), cancel);
        return chosen is not null && Build(state, standing, chosen);
    }

    /// <summary>Where too many nurse-days were seen, those that do their care most cheaply beside what the same care costs in the plan as it stands.</summary>
    private static RouteColumn[] Chosen(RouteColumn[] seen, RouteColumn[] standing)
    {
        int most = MostColumns - standing.Length;
        if (seen.Length <= most) return [.. seen.OrderBy(c => c.Cost / c.Visits.Length).ThenBy(c => c.Key)];
        var share = new Dictionary<int, double>();
        foreach (RouteColumn column in standing)
        {
            foreach (int[] visit in column.Visits)
                foreach (int unit in visit) share[unit] = column.Cost / column.Visits.Length / visit.Length;
        }

        return [.. seen.OrderBy(c => c.Cost - c.Units.Sum(u => share.GetValueOrDefault(u))).ThenBy(c => c.Key).Take(most)];
    }

    /// <summary>No visit of the day is tied to another day by its minutes.</summary>
    private bool IsFree(WeekState state, int route)
    {
        if (!week.Routes.Open[route] || state.Visits[route] == 0) return false;
        foreach (int slot in state.OrderOf(route))
        {
            if (state.Pinned[slot]) return false;
            for (int u = state.FirstUnit[slot]; u >= 0; u = state.UnitNext[u])
            {
                if (week.Units.HeldBack[u] || FollowedByMinutes(u)) return false;
            }
        }

        return true;
    }

    private bool FollowedByMinutes(int unit) =>
        week.Units.Chained[unit] && week.Units.Tasks[unit].Any(t => week.Tasks.Next[t].Any(n => week.Tasks.MinGap[n] > 0 && !week.Tasks.GapInDays[n]));

    /// <summary>The unit is open or stands on a free day, and chained care keeps its day.</summary>
    private bool Fits(WeekState state, RouteColumn column, int unit, HashSet<int> free)
    {
        int slot = state.UnitSlot[unit];
        if (slot < 0) return !week.Units.Chained[unit];
        return free.Contains(state.RouteA[slot]) && (!week.Units.Chained[unit] || state.DayOf(slot) == week.Routes.Day[column.Route]);
    }

    private Dictionary<int, double> Worth(WeekState state, RouteColumn[] columns)
    {
        var worth = new Dictionary<int, double>();
        foreach (int unit in columns.SelectMany(c => c.Units).Where(u => state.UnitSlot[u] < 0))
            worth[unit] = week.Units.Tasks[unit].Sum(t => week.Tasks.UnmetPoints[t] * week.Tasks.PointPrice[t]);
        return worth;
    }

    private bool Build(WeekState state, RouteColumn[] standing, IReadOnlyList<RouteColumn> chosen)
    {
        var kept = chosen.ToHashSet();
        RouteColumn[] gone = [.. standing.Where(c => !kept.Contains(c))], news = [.. chosen.Except(standing)];
        if (news.Length == 0) return false;
        editor.Remove(state, gone.SelectMany(c => c.Units).ToArray());
        foreach (RouteColumn column in news)
        {
            for (int position = 0; position < column.Visits.Length; position++)
            {
                int slot = week.Slot(week.Units.Patient[column.Visits[position][0]], week.Routes.Day[column.Route]);
                if (state.FirstUnit[slot] >= 0) return false;
                foreach (int unit in column.Visits[position])
                    editor.Insert(state, unit, new Proposal(0, slot, column.Route, Math.Min(position, state.Visits[column.Route])));
            }
        }

        return week.Caps.Hold(state);
    }
}
