using Google.OrTools.Sat;

namespace HomeLine.Planning.Bounding;

/// <summary>The master problem in whole numbers over listed nurse-days, solved tier by tier with one worker, a fixed seed and deterministic limits.</summary>
internal sealed class ColumnChoice
{
    private readonly CpModel _model = new();
    private readonly LinearExprBuilder[] _tiers = [.. Enumerable.Range(0, 6).Select(_ => LinearExpr.NewBuilder())];
    private readonly BoolVar[] _taken;
    private readonly IReadOnlyList<DayColumn> _columns;
    private readonly double _effort;

    public ColumnChoice(Rows rows, IReadOnlyList<DayColumn> columns, Func<SideVariable, bool> leftOut, double effort)
    {
        (_columns, _effort) = (columns, effort);
        LinearExprBuilder[] sums = [.. rows.Bounds.Select(_ => LinearExpr.NewBuilder())];
        _taken = [.. columns.Select((_, i) => _model.NewBoolVar($"c{i}"))];
        for (int i = 0; i < _taken.Length; i++)
        {
            sums[rows.OfDay[columns[i].Day.Index]].Add(_taken[i]);
            foreach ((int row, int times) in columns[i].Nodes.SelectMany(n => n.Rows)) sums[row].AddTerm(_taken[i], times);
            Count(_taken[i], columns[i].Adds);
        }

        foreach (SideVariable side in rows.Sides.Where(s => !leftOut(s)))
        {
            IntVar variable = _model.NewIntVar(0, side.Most, "");
            foreach ((int row, int times) in side.Terms) sums[row].AddTerm(variable, times);
            Count(variable, side.Adds);
        }

        for (int r = 0; r < sums.Length; r++) _model.AddLinearConstraint(sums[r], rows.Bounds[r].Least == int.MinValue ? -1_000_000 : rows.Bounds[r].Least, rows.Bounds[r].Most);
    }

    /// <summary>Tells the solver where to begin: the listed nurse-days with the care of given ones.</summary>
    public void Suggest(IEnumerable<DayColumn> planned)
    {
        var care = planned.Select(Care).ToHashSet();
        for (int i = 0; i < _taken.Length; i++) _model.AddHint(_taken[i], care.Remove(Care(_columns[i])));
    }

    private static string Care(DayColumn column) => $"{column.Day.Index}: {string.Join(',', column.Nodes.Select(n => n.Bundle).Order())}";

    /// <summary>The most a tier may be from now on.</summary>
    public void Limit(Tier tier, long most) => _model.Add(_tiers[(int)tier] <= most);

    /// <summary>What a tier is proven to be at least; 0 when nothing was proven within the effort.</summary>
    public long Least(Tier tier, CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested) return 0;
        _model.Minimize(_tiers[(int)tier]);
        using var solver = new CpSolver
        {
            StringParameters = FormattableString.Invariant($"num_workers:1 random_seed:1 linearization_level:2 max_deterministic_time:{_effort}"),
        };
        using CancellationTokenRegistration stop = cancel.Register(solver.StopSearch);
        CpSolverStatus status = solver.Solve(_model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible or CpSolverStatus.Unknown ? (long)Math.Ceiling(Math.Max(0, solver.BestObjectiveBound) - 1e-6) : 0;
    }

    private void Count(IntVar variable, long[] adds)
    {
        for (int t = 0; t < adds.Length; t++)
        {
            if (adds[t] != 0) _tiers[t].AddTerm(variable, adds[t]);
        }
    }
}
