namespace HomeLine.Planning.Bounding;

/// <summary>
/// Prices of large weeks: no master problem, but a climb. At the present prices every nurse-day is spent as cheaply as it can be; care done too often becomes cheaper,
/// care not done dearer, by a step that shrinks when it stops helping (subgradient method with a share of the last directions kept, after Held, Wolfe and Crowder 1974, step by the
/// distance to the plan's amount after Polyak 1969, both from memory). The first part of the rounds looks at days by <see cref="DayTail"/> alone, the rest also by <see cref="DayPricing"/>, which takes
/// longer and proves more.
/// </summary>
internal sealed class PriceAscent(Rows rows, DayGraph[] graphs, DayPricing[] pricing, DayTail tail, Lagrange lagrange, Tier tier)
{
    private const double ShareByTail = 0.75, Hair = 1e-6, Kept = 0.6, FirstStep = 0.25, ExactStep = 0.1, Shrink = 0.75;
    private const int Patience = 4;

    /// <summary>The best bound proven; negative infinity when no round was whole.</summary>
    public double Proven { get; private set; } = double.NegativeInfinity;

    /// <summary>By row: prices under which it holds.</summary>
    public double[] RowPrice { get; private set; } = [];

    /// <summary>By tier: the same.</summary>
    public double[] TierPrice { get; } = [.. Enumerable.Range(0, 6).Select(t => t == (int)tier ? 1.0 : 0.0)];

    /// <summary>Climbs from prices towards a target; returns the rounds made.</summary>
    public int Climb(double[] from, long target, int rounds, Func<VisitNode, bool> nodeOut, CancellationToken cancel)
    {
        double[] price = [.. from], direction = new double[from.Length];
        double step = FirstStep;
        int idle = 0, byTail = (int)(ShareByTail * rounds);
        for (int round = 0; round < rounds; round++)
        {
            if (round == byTail) (step, idle) = (Math.Max(step, ExactStep), Patience);
            if (idle >= Patience && RowPrice.Length > 0)
            {
                // Back to the best prices, and on from there in smaller steps.
                price = [.. RowPrice];
                if (round != byTail) step *= Shrink;
                idle = 0;
                Array.Clear(direction);
            }

            List<VisitNode> visits = Spend(price, round >= byTail, nodeOut, cancel, out double sum);
            if (cancel.IsCancellationRequested) return round;
            double value = lagrange.Of(price, TierPrice) + sum;
            if (value > Proven + Hair) (Proven, RowPrice, idle) = (value, [.. price], 0);
            else idle++;
            if (Math.Ceiling(Proven - Hair) >= target) return round + 1;
            double[] missing = lagrange.Missing(price, TierPrice, visits);
            double square = 0;
            for (int r = 0; r < direction.Length; r++)
            {
                direction[r] = (Kept * direction[r]) + ((1 - Kept) * missing[r]);
                square += direction[r] * direction[r];
            }

            if (square < Hair) return round + 1;
            double by = step * (target - value) / square;
            for (int r = 0; r < price.Length; r++) price[r] = lagrange.Allowed(r, price[r] + (by * direction[r]));
        }

        return rounds;
    }

    /// <summary>The cheapest way to spend each nurse-day, and the sum of their reduced costs; a nurse-day's own row has no price, she may always stay at home.</summary>
    private List<VisitNode> Spend(double[] rowPrice, bool exactly, Func<VisitNode, bool> nodeOut, CancellationToken cancel, out double sum)
    {
        var visits = new List<VisitNode>();
        sum = 0;
        for (int d = 0; d < graphs.Length && !cancel.IsCancellationRequested; d++)
        {
            double[] price = TierBounding.Prices(graphs[d], rowPrice, TierPrice, nodeOut);
            double work = TierPrice[(int)Tier.Work];
            IReadOnlyList<int> path;
            if (exactly)
            {
                List<int[]> best = pricing[d].Search(price, work, 0, -rowPrice[rows.OfDay[d]], fast: false, most: 1);
                sum += pricing[d].Least;
                path = best.Count > 0 ? best[0] : pricing[d].Least < 0 ? tail.Path() : [];
            }
            else
            {
                tail.Fill(graphs[d], price, work);
                sum += Math.Min(0, tail.Whole - rowPrice[rows.OfDay[d]]);
                path = tail.Path();
            }

            visits.AddRange(path.Select(n => graphs[d].Nodes[n]));
        }

        return visits;
    }
}
