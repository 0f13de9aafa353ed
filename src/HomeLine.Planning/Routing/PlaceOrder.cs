namespace HomeLine.Planning.Routing;

/// <summary>
/// Numbers places so that near ones have near numbers: what a move reads of a matrix row then lies in a few cache lines. The search only knows a matrix and
/// no map, so the order comes from halving: the places nearer to one of two far-apart ones, then the rest, and each half again.
/// </summary>
internal static class PlaceOrder
{
    /// <summary>Own limit: a part as small as this stays as it is.</summary>
    private const int Smallest = 4;

    /// <summary>Own limit: below this everything is in the cache anyway.</summary>
    private const int WorthIt = 200;

    /// <summary>The same problem with its places renumbered; requests and kinds keep their numbers.</summary>
    public static RoutingProblem Near(RoutingProblem problem)
    {
        int places = problem.Places;
        if (places < WorthIt) return problem;
        int[] order = Of(problem.Cost, places), number = new int[places];
        for (int i = 0; i < places; i++) number[order[i]] = i;
        int[] cost = Reordered(problem.Cost, order), time = ReferenceEquals(problem.Cost, problem.Time) ? cost : Reordered(problem.Time, order);
        return problem with
        {
            Cost = cost,
            Time = time,
            Requests = [.. problem.Requests.Select(request => request with { Place = number[request.Place] })],
            Kinds = [.. problem.Kinds.Select(kind => kind with { Start = number[kind.Start], End = number[kind.End] })],
        };
    }

    private static int[] Of(int[] cost, int places)
    {
        int[] order = [.. Enumerable.Range(0, places)];
        Halve(cost, places, order, 0, places);
        return order;
    }

    private static void Halve(int[] cost, int places, int[] order, int from, int count)
    {
        if (count <= Smallest) return;
        int a = Farthest(cost, places, order.AsSpan(from, count), order[from]), b = Farthest(cost, places, order.AsSpan(from, count), a);
        var nearer = new long[count];
        for (int i = 0; i < count; i++) nearer[i] = (long)cost[(a * places) + order[from + i]] - cost[(b * places) + order[from + i]];
        int[] part = order[from..(from + count)];
        Array.Sort(nearer, part);
        part.CopyTo(order, from);
        Halve(cost, places, order, from, count / 2);
        Halve(cost, places, order, from + (count / 2), count - (count / 2));
    }

    private static int Farthest(int[] cost, int places, ReadOnlySpan<int> among, int origin)
    {
        int farthest = among[0];
        foreach (int place in among)
            if (cost[(origin * places) + place] > cost[(origin * places) + farthest]) farthest = place;
        return farthest;
    }

    private static int[] Reordered(int[] matrix, int[] order)
    {
        var reordered = new int[matrix.Length];
        for (int a = 0; a < order.Length; a++)
            for (int b = 0; b < order.Length; b++)
                reordered[(a * order.Length) + b] = matrix[(order[a] * order.Length) + order[b]];
        return reordered;
    }
}
