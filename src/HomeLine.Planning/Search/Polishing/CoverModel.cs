using Google.OrTools.Sat;

namespace HomeLine.Planning.Search.Polishing;

/// <summary>
/// Chooses nurse-days out of those seen so that all care done today stays done, nobody is visited twice a day, and the whole costs least: an exact cover,
/// solved by a general integer solver with one worker, a fixed seed and a limit in deterministic time.
/// </summary>
internal sealed class CoverModel(CompiledWeek week)
{
    private const double CentsPerPoint = 100, LargestCost = 1e9;

    /// <param name="columns">Nurse-days to choose from.</param>
    /// <param name="incumbent">The nurse-days of the plan, each among the columns.</param>
    /// <param name="open">Units the plan leaves out, and what placing each is worth.</param>
    /// <param name="work">Limit in the solver's deterministic units.</param>
    /// <param name="cancel">Stops the solver where it is.</param>
    /// <returns>The chosen columns, or nothing when the solver found none better in time.</returns>
    public IReadOnlyList<RouteColumn>? Choose(
        IReadOnlyList<RouteColumn> columns, IReadOnlySet<RouteColumn> incumbent, IReadOnlyDictionary<int, double> open, double work, CancellationToken cancel)
    {
        var model = new CpModel();
        BoolVar[] chosen = [.. columns.Select((_, i) => model.NewBoolVar($"c{i}"))];
        var must = incumbent.SelectMany(c => c.Units).ToHashSet();
        Cover(model, columns, chosen, must);
        foreach (var ofRoute in Enumerable.Range(0, columns.Count).GroupBy(i => columns[i].Route)) model.AddAtMostOne(ofRoute.Select(i => chosen[i]));
        OneVisitADay(model, columns, chosen);
        if (cancel.IsCancellationRequested) return null;
        model.Minimize(LinearExpr.WeightedSum(chosen, columns.Select(c => CostOf(c, open))));
        for (int i = 0; i < chosen.Length; i++) model.AddHint(chosen[i], incumbent.Contains(columns[i]));
        using var solver = new CpSolver
        {
            StringParameters = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"num_workers:1 random_seed:1 max_deterministic_time:{work}"),
        };
        using CancellationTokenRegistration stop = cancel.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) return null;
        return [.. Enumerable.Range(0, chosen.Length).Where(i => solver.BooleanValue(chosen[i])).Select(i => columns[i])];
    }

    private static void Cover(CpModel model, IReadOnlyList<RouteColumn> columns, BoolVar[] chosen, HashSet<int> must)
    {
        var byUnit = Enumerable.Range(0, columns.Count).SelectMany(i => columns[i].Units, (i, unit) => (Column: i, Unit: unit)).ToLookup(p => p.Unit, p => p.Column);
        foreach (var unit in byUnit)
        {
            if (must.Contains(unit.Key)) model.AddExactlyOne(unit.Select(i => chosen[i]));
            else model.AddAtMostOne(unit.Select(i => chosen[i]));
        }
    }

    private void OneVisitADay(CpModel model, IReadOnlyList<RouteColumn> columns, BoolVar[] chosen)
    {
        var byDoor = Enumerable.Range(0, columns.Count)
            .SelectMany(i => columns[i].Visits, (i, visit) => (Column: i, Door: week.Slot(week.Units.Patient[visit[0]], week.Routes.Day[columns[i].Route])))
            .ToLookup(p => p.Door, p => p.Column);
        foreach (var door in byDoor.Where(d => d.Select(i => columns[i].Route).Distinct().Skip(1).Any())) model.AddAtMostOne(door.Select(i => chosen[i]));
    }

    private static long CostOf(RouteColumn column, IReadOnlyDictionary<int, double> open)
    {
        double cost = Math.Min(column.Cost, LargestCost);
        foreach (int unit in column.Units) cost -= Math.Min(open.GetValueOrDefault(unit), LargestCost);
        return (long)Math.Round(cost * CentsPerPoint);
    }
}
