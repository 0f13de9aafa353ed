namespace HomeLine.Planning.Routing;

/// <summary>Requests sorted by how close they are to each request.</summary>
internal static class Neighbours
{
    /// <summary>Own weight of a minute of unavoidable waiting against a unit of cost (the value common in the literature).</summary>
    private const double WaitWeight = 0.2;

    /// <summary>By cost in both directions; the request itself comes first.</summary>
    public static int[][] ByCost(RoutingModel model, int count) => Sorted(model, count, includeSelf: true, (a, b) =>
        model.Cost[(model.Of[a].Place * model.Places) + model.Of[b].Place] + model.Cost[(model.Of[b].Place * model.Places) + model.Of[a].Place]);

    /// <summary>By cost and unavoidable waiting in the better direction; pairs that can never be neighbours come last.</summary>
    public static int[][] ByCostAndTime(RoutingModel model, int count) =>
        Sorted(model, count, includeSelf: false, (a, b) => Math.Min(Following(model, a, b), Following(model, b, a)));

    private static double Following(RoutingModel model, int a, int b)
    {
        VisitFacts first = model.Of[a], second = model.Of[b];
        int index = (first.Place * model.Places) + second.Place;
        long earliest = (long)first.Opens + first.Service + model.Time[index];
        if (earliest > second.Closes) return 1e15 + earliest;
        long wait = second.Opens - model.Time[index] - first.Service - first.Closes;
        return model.Cost[index] + (WaitWeight * Math.Max(0, wait));
    }

    private static int[][] Sorted(RoutingModel model, int count, bool includeSelf, Func<int, int, double> distance)
    {
        var sorted = new int[model.Requests][];
        var keys = new double[model.Requests];
        var order = new int[model.Requests];
        for (int r = 0; r < sorted.Length; r++)
        {
            for (int other = 0; other < order.Length; other++)
            {
                order[other] = other;
                keys[other] = other == r ? (includeSelf ? -1 : double.MaxValue) : distance(r, other);
            }

            Array.Sort(keys, order);
            sorted[r] = order[..Math.Min(count, includeSelf ? order.Length : order.Length - 1)];
        }

        return sorted;
    }
}
