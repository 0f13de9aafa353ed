using Google.OrTools.LinearSolver;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// The master problem without whole numbers: nurse-days found so far may be taken in part. It minimises one tier while earlier ones keep their limits, and its dual
/// prices say what a new nurse-day would have to cost less than.
/// </summary>
internal sealed class Relaxation : IDisposable
{
    private readonly Solver _solver = Solver.CreateSolver("GLOP");
    private readonly Rows _rows;
    private readonly Constraint?[] _row;
    private readonly Constraint?[] _limit = new Constraint?[6];
    private readonly Tier _tier;

    /// <param name="rows">The rows.</param>
    /// <param name="tier">What to minimise.</param>
    /// <param name="limits">By earlier tier: the most it may be; empty where the visits themselves keep it.</param>
    /// <param name="leftOut">Whether a side variable is left out.</param>
    public Relaxation(Rows rows, Tier tier, long?[] limits, Func<SideVariable, bool> leftOut)
    {
        (_rows, _tier) = (rows, tier);
        _row = [.. rows.Bounds.Select((b, i) => tier < Tier.People && rows.OnlyPeople(i) ? null : _solver.MakeConstraint(Low(b.Least), b.Most))];
        for (int t = 0; t < (int)tier; t++)
        {
            if (limits[t] is { } most) _limit[t] = _solver.MakeConstraint(double.NegativeInfinity, most);
        }

        _solver.Objective().SetMinimization();
        foreach (SideVariable side in rows.Sides.Where(s => !leftOut(s))) Add(side.Terms, side.Adds, side.Most);
        RowPrice = new double[_row.Length];
        TierPrice = new double[6];
        TierPrice[(int)tier] = 1;
    }

    /// <summary>By row: its dual price after a solution.</summary>
    public double[] RowPrice { get; }

    /// <summary>By tier: what a unit of it costs; 1 for the tier minimised, for earlier ones what keeping their limit costs.</summary>
    public double[] TierPrice { get; }

    public double Value { get; private set; }

    public void Add(DayColumn column)
    {
        var terms = new Dictionary<int, int> { [_rows.OfDay[column.Day.Index]] = 1 };
        foreach ((int row, int times) in column.Nodes.SelectMany(n => n.Rows)) terms[row] = terms.GetValueOrDefault(row) + times;
        Add([.. terms.Select(t => (t.Key, t.Value))], column.Adds, double.PositiveInfinity);
    }

    /// <summary>Solves; false when it has no solution or was interrupted.</summary>
    public bool Solve(CancellationToken cancel)
    {
        using CancellationTokenRegistration stop = cancel.Register(() => _solver.InterruptSolve());
        if (_solver.Solve() != Solver.ResultStatus.OPTIMAL) return false;
        Value = _solver.Objective().Value();
        for (int r = 0; r < _row.Length; r++)
        {
            double price = _row[r]?.DualValue() ?? 0;
            RowPrice[r] = _rows.Bounds[r].Least == int.MinValue ? Math.Min(0, price) : price;
        }

        for (int t = 0; t < (int)_tier; t++) TierPrice[t] = Math.Max(0, -(_limit[t]?.DualValue() ?? 0));
        return true;
    }

    public void Dispose() => _solver.Dispose();

    private void Add((int Row, int Times)[] terms, long[] adds, double most)
    {
        Variable variable = _solver.MakeNumVar(0, most, "");
        _solver.Objective().SetCoefficient(variable, adds[(int)_tier]);
        foreach ((int row, int times) in terms) _row[row]?.SetCoefficient(variable, times);
        for (int t = 0; t < (int)_tier; t++) _limit[t]?.SetCoefficient(variable, adds[t]);
    }

    private static double Low(int least) => least == int.MinValue ? double.NegativeInfinity : least;
}
