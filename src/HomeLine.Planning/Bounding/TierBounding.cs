namespace HomeLine.Planning.Bounding;

/// <summary>
/// Column generation for one tier: the master problem gives prices, each nurse-day looks for a better way to spend the day at those prices, until none is left. In every
/// complete round the prices prove a bound (Lagrange): the master's value and, for each nurse-day, the least reduced cost.
/// </summary>
internal sealed class TierBounding(BoundWeek week, Rows rows, DayGraph[] graphs, BoundOptions options)
{
    private const int ColumnsADay = 12;
    private const double Hair = 1e-6;

    private readonly DayCost _cost = new(week.Problem);
    private readonly DayPricing[] _pricing = [.. graphs.Select(g => new DayPricing(week.Problem.Rules, g, options.Labels))];

    private readonly HashSet<(int Day, string Nodes)> _known = [];

    /// <summary>All nurse-days found so far.</summary>
    public List<DayColumn> Columns { get; } = [];

    public int Rounds { get; private set; }

    /// <summary>The best bound proven for the tier last looked at; negative infinity when nothing was.</summary>
    public double Proven { get; private set; }

    /// <summary>By row: prices under which <see cref="Proven"/> holds.</summary>
    public double[] RowPrice { get; private set; } = [];

    /// <summary>By tier: prices under which <see cref="Proven"/> holds.</summary>
    public double[] TierPrice { get; private set; } = [];

    /// <summary>Works towards the least of a tier; stops as soon as the bound, rounded up, reaches the target.</summary>
    public void Minimise(Tier tier, long target, long?[] limits, Func<VisitNode, bool> nodeOut, Func<SideVariable, bool> sideOut, CancellationToken cancel)
    {
        using var relaxation = new Relaxation(rows, tier, limits, sideOut);
        foreach (DayColumn column in Columns.Where(c => !c.Nodes.Any(nodeOut))) relaxation.Add(column);
        Proven = double.NegativeInfinity;
        bool fast = true;
        for (int round = 0; round < options.Rounds && !cancel.IsCancellationRequested; round++)
        {
            if (!relaxation.Solve(cancel)) return;
            Rounds++;
            int found = Price(relaxation, nodeOut, fast, cancel, out double sum, out bool complete);
            if (!fast && complete) Keep(relaxation, sum);
            if (Math.Ceiling(Proven - Hair) >= target) return;
            if (found == 0 && !fast) return;
            fast = found > 0;
        }
    }

    private void Keep(Relaxation relaxation, double sum)
    {
        if (relaxation.Value + sum <= Proven) return;
        Proven = relaxation.Value + sum;
        (RowPrice, TierPrice) = ([.. relaxation.RowPrice], [.. relaxation.TierPrice]);
    }

    private int Price(Relaxation relaxation, Func<VisitNode, bool> nodeOut, bool fast, CancellationToken cancel, out double sum, out bool complete)
    {
        int found = 0;
        (sum, complete) = (0, true);
        for (int d = 0; d < graphs.Length; d++)
        {
            if (cancel.IsCancellationRequested) complete = false;
            if (!complete && fast) break;
            double[] price = Prices(graphs[d], relaxation.RowPrice, relaxation.TierPrice, nodeOut);
            double work = relaxation.TierPrice[(int)Tier.Work], load = relaxation.TierPrice[(int)Tier.People], start = -relaxation.RowPrice[rows.OfDay[d]];
            foreach (int[] path in _pricing[d].Search(price, work, load, start, fast, ColumnsADay))
            {
                if (!_known.Add((d, string.Join(',', path))) || _cost.Of(graphs[d].Day, [.. path.Select(n => graphs[d].Nodes[n])]) is not { } column) continue;
                Columns.Add(column);
                relaxation.Add(column);
                found++;
            }

            sum += _pricing[d].Least;
            complete &= _pricing[d].Complete;
        }

        return found;
    }

    /// <summary>By node of a nurse-day: what the visit costs at given prices, the road left aside; infinite when it is ruled out.</summary>
    public static double[] Prices(DayGraph graph, double[] rowPrice, double[] tierPrice, Func<VisitNode, bool> nodeOut)
    {
        var price = new double[graph.Nodes.Length];
        for (int n = 0; n < price.Length; n++)
        {
            VisitNode node = graph.Nodes[n];
            price[n] = nodeOut(node) ? double.PositiveInfinity : 0;
            for (int t = 0; t < tierPrice.Length; t++) price[n] += tierPrice[t] * node.Adds[t];
            foreach ((int row, int times) in node.Rows) price[n] -= rowPrice[row] * times;
        }

        return price;
    }
}
