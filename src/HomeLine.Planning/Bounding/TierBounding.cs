namespace HomeLine.Planning.Bounding;

/// <summary>
/// The best bound for one tier that prices can prove. Small weeks: column generation, the master problem gives prices, each nurse-day looks for a better way to spend the day at those
/// prices, until none is left. Prices are taken half way between the master's and those of the best bound so far (dual smoothing, after Wentges 1997, from memory), for
/// the master's alone swing wildly. Large weeks: <see cref="PriceAscent"/>. At any prices the bound is <see cref="Lagrange"/>, so each round proves one.
/// </summary>
internal sealed class TierBounding(BoundWeek week, Rows rows, DayGraph[] graphs, BoundOptions options)
{
    private const int ColumnsADay = 12;
    private const double Hair = 1e-6, Smoothing = 0.5;

    private readonly DayCost _cost = new(week.Problem);
    private readonly DayTail _tail = new(week.Problem.Rules);
    private readonly HashSet<(int Day, string Nodes)> _known = [];
    private DayPricing[] _pricing = [];

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
        Proven = double.NegativeInfinity;
        if (_pricing.Length == 0) _pricing = [.. graphs.Select(g => new DayPricing(week.Problem.Rules, g, options.Labels, _tail))];
        var lagrange = new Lagrange(rows, tier, limits, sideOut);
        if (week.Units.Length >= options.ClimbFrom)
        {
            var ascent = new PriceAscent(rows, graphs, _pricing, _tail, lagrange, tier);
            Rounds += ascent.Climb(Shares(tier), target, options.Rounds, nodeOut, cancel);
            (Proven, RowPrice, TierPrice) = (ascent.Proven, ascent.RowPrice, ascent.TierPrice);
            return;
        }

        using var relaxation = new Relaxation(rows, tier, limits, sideOut);
        foreach (DayColumn column in Columns.Where(c => !c.Nodes.Any(nodeOut))) relaxation.Add(column);
        bool fast = true, smooth = true;
        for (int round = 0; round < options.Rounds && !cancel.IsCancellationRequested; round++)
        {
            if (!relaxation.Solve(cancel)) return;
            Rounds++;
            bool smoothed = smooth && !double.IsNegativeInfinity(Proven);
            double[] rowPrice = smoothed ? Between(relaxation.RowPrice, RowPrice) : [.. relaxation.RowPrice], tierPrice = smoothed ? Between(relaxation.TierPrice, TierPrice) : [.. relaxation.TierPrice];
            int found = Price(relaxation, rowPrice, tierPrice, nodeOut, fast, cancel, out double sum);
            if (cancel.IsCancellationRequested) return;
            Keep(lagrange.Of(rowPrice, tierPrice) + sum, rowPrice, tierPrice);
            if (Math.Ceiling(Proven - Hair) >= target) return;
            if (found == 0 && !fast && !smoothed) return;
            (fast, smooth) = (found > 0, found > 0);
        }
    }

    /// <summary>Prices to begin with: what each piece of care costs in the plan, a nurse-day's road and waiting shared out among its visits.</summary>
    private double[] Shares(Tier tier)
    {
        var price = new double[rows.Bounds.Count];
        foreach (CareUnit unit in week.Units) price[rows.Cover[unit.Index]] = tier < Tier.Work ? unit.Unmet[(int)tier] : 0;
        foreach (DayColumn column in Columns)
        {
            double road = column.Adds[(int)tier] - column.Nodes.Sum(n => n.Adds[(int)tier]);
            foreach (VisitNode node in column.Nodes.Where(n => !n.IsSecond))
                foreach (CareUnit unit in node.Units) price[rows.Cover[unit.Index]] = (node.Adds[(int)tier] + (road / column.Nodes.Length)) / node.Units.Length;
        }

        return price;
    }

    private static double[] Between(double[] one, double[] other)
    {
        var between = new double[one.Length];
        for (int i = 0; i < one.Length; i++) between[i] = ((1 - Smoothing) * one[i]) + (Smoothing * other[i]);
        return between;
    }

    private void Keep(double proven, double[] rowPrice, double[] tierPrice)
    {
        if (proven > Proven) (Proven, RowPrice, TierPrice) = (proven, rowPrice, tierPrice);
    }

    private int Price(Relaxation relaxation, double[] rowPrice, double[] tierPrice, Func<VisitNode, bool> nodeOut, bool fast, CancellationToken cancel, out double sum)
    {
        int found = 0;
        sum = 0;
        for (int d = 0; d < graphs.Length && !cancel.IsCancellationRequested; d++)
        {
            double[] price = Prices(graphs[d], rowPrice, tierPrice, nodeOut);
            foreach (int[] path in _pricing[d].Search(price, tierPrice[(int)Tier.Work], tierPrice[(int)Tier.People], -rowPrice[rows.OfDay[d]], fast, ColumnsADay))
            {
                if (!_known.Add((d, string.Join(',', path))) || _cost.Of(graphs[d].Day, [.. path.Select(n => graphs[d].Nodes[n])]) is not { } column) continue;
                Columns.Add(column);
                relaxation.Add(column);
                found++;
            }

            sum += _pricing[d].Least;
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
