namespace HomeLine.Planning.Routing.Supplies;

/// <summary>Takes strings of neighbouring requests out of neighbouring routes; now and then a whole route of somebody near.</summary>
internal sealed class SupplyRuin
{
    /// <summary>Own values: requests taken out on average, longest string, one move in so many that empties a route.</summary>
    private const int Average = 9, LongestString = 8, WholeRouteEvery = 12;

    private readonly SupplyState _state;
    private readonly Chance _chance;
    private readonly int[][] _near;
    private readonly bool[] _hit;

    public SupplyRuin(SupplyProblem problem, SupplyState state, Chance chance)
    {
        _state = state;
        _chance = chance;
        int[] all = [.. Enumerable.Range(0, problem.Requests.Length)];
        _near = [.. all.Select(one => all.OrderBy(other => other == one ? -1 : Apart(problem, one, other)).ToArray())];
        _hit = new bool[problem.People.Length];
        Removed = new int[all.Length];
    }

    /// <summary>What the last ruin took out, and what was left out before: the first <see cref="Count"/> cells.</summary>
    public int[] Removed { get; }
    public int Count { get; private set; }

    public void Apply()
    {
        Count = 0;
        Array.Clear(_hit);
        int wanted = 1 + _chance.Next((2 * Average) - 1);
        bool whole = _chance.Next(WholeRouteEvery) == 0;
        foreach (int request in _near[_chance.Next(_near.Length)])
        {
            int person = _state.PersonOf[request];
            if (person < 0 || _hit[person]) continue;
            _hit[person] = true;
            int most = whole ? _state.Routes[person].Count : 1 + _chance.Next(Math.Min(LongestString, _state.Routes[person].Count));
            whole = false;
            TakeOut(_state.Routes[person], request, Math.Min(most, wanted - Count));
            if (Count >= wanted) break;
        }

        for (int request = 0; request < _near.Length && _state.Missing > Count; request++)
            if (_state.PersonOf[request] < 0 && Array.IndexOf(Removed, request, 0, Count) < 0) Removed[Count++] = request;
    }

    private void TakeOut(SupplyRoute route, int request, int length)
    {
        int at = Array.IndexOf(route.Stops, request, 0, route.Count);
        int from = Math.Max(0, Math.Min(at - _chance.Next(length), route.Count - length));
        int end = Count;
        for (int i = from; i < Math.Min(from + length, route.Count); i++)
            if (route.Stops[i] >= 0) Removed[end++] = route.Stops[i];
        for (; Count < end; Count++) _state.Remove(Removed[Count]);
    }

    // Near in space and, at a lower weight, in time.
    private static double Apart(SupplyProblem problem, int one, int other)
    {
        SupplyRequest a = problem.Requests[one], b = problem.Requests[other];
        int travel = Math.Min(problem.Travel[(a.Place * problem.Places) + b.Place], problem.Travel[(b.Place * problem.Places) + a.Place]);
        return travel + (0.1 * Math.Abs((((double)a.Opens + a.Closes) - b.Opens - b.Closes) / 2));
    }
}
