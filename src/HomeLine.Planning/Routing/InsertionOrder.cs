namespace HomeLine.Planning.Routing;

/// <summary>
/// The orders in which removed requests are put back, and how often each is drawn (Christiaens and Vanden Berghe 2020): random 4, most demand 4, farthest 2,
/// nearest 1, narrowest window 2, earliest opening 2, latest closing 2; with several days also fewest choices 4 (own).
/// </summary>
internal sealed class InsertionOrder
{
    private readonly int[][] _keys;
    private readonly int[] _draws;
    private readonly Chance _chance;
    private readonly int[] _random;

    public InsertionOrder(RoutingModel model, Chance chance)
    {
        _chance = chance;
        _random = new int[model.Requests];
        int depot = model.Problem.Kinds.Length == 0 ? 0 : model.Problem.Kinds[0].Start;
        var asked = model.Problem.Requests;
        int[] far = [.. asked.Select(request => model.Cost[(depot * model.Places) + request.Place])];
        _keys =
        [
            _random,
            [.. asked.Select(request => -request.Demand)],
            [.. far.Select(cost => -cost)],
            far,
            [.. asked.Select(request => request.Closes - request.Opens)],
            [.. asked.Select(request => request.Opens)],
            [.. asked.Select(request => -request.Closes)],
            [.. asked.Select(request => request.DayPatterns.Length)],
        ];
        int[] weights = [4, 4, 2, 1, 2, 2, 2, model.Days > 1 ? 4 : 0];
        _draws = [.. weights.SelectMany((weight, order) => Enumerable.Repeat(order, weight))];
    }

    /// <summary>Sorts the first requests of the array by an order drawn at random.</summary>
    public void Sort(int[] requests, int count)
    {
        int[] keys = _keys[_draws[_chance.Next(_draws.Length)]];
        if (ReferenceEquals(keys, _random))
            for (int i = 0; i < count; i++) _random[requests[i]] = _chance.Next(1 << 30);
        for (int i = 1; i < count; i++)
        {
            int request = requests[i], key = keys[request], at = i;
            for (; at > 0 && keys[requests[at - 1]] > key; at--) requests[at] = requests[at - 1];
            requests[at] = request;
        }
    }
}
