namespace HomeLine.Planning.Routing.Unloading;

/// <summary>
/// Where a round with a given order of customers unloads best: the least travel over all ways to cut the order into trips that fit, by dynamic programming
/// (the splitting of Beasley 1983, with the cheapest facility between two customers looked up).
/// </summary>
internal sealed class UnloadingTrips
{
    private readonly UnloadingProblem _problem;
    private readonly int[] _place, _demand, _service, _via, _facility;
    private readonly int _places;

    // For each customer of the order: least travel until there with the load not yet unloaded, and where its trip begins.
    private readonly int[] _least, _begin, _chain;

    public UnloadingTrips(UnloadingProblem problem)
    {
        _problem = problem;
        _places = problem.Places;
        _place = [.. problem.Customers.Select(customer => customer.Place)];
        _demand = [.. problem.Customers.Select(customer => customer.Demand)];
        _service = [.. problem.Customers.Select(customer => customer.Service)];
        _facility = new int[_places * _places];
        _via = new int[_places * _places];
        for (int a = 0; a < _places; a++)
            for (int b = 0; b < _places; b++)
            {
                int best = problem.Facilities.MinBy(facility => Leg(a, facility) + Leg(facility, b));
                _facility[(a * _places) + b] = best;
                _via[(a * _places) + b] = Leg(a, best) + Leg(best, b);
            }

        _least = new int[problem.Customers.Length + 1];
        _begin = new int[problem.Customers.Length + 1];
        _chain = new int[problem.Customers.Length + 1];
    }

    /// <summary>Travel of a round and the minutes by which it is too long.</summary>
    public (int Travel, int Excess) Of(ReadOnlySpan<int> customers)
    {
        if (customers.Length == 0) return (0, 0);
        int service = 0;
        for (int j = 0; j < customers.Length; j++)
        {
            int place = _place[customers[j]], load = 0;
            service += _service[customers[j]];
            _chain[j] = j == 0 ? 0 : _chain[j - 1] + Leg(_place[customers[j - 1]], place);
            _least[j] = int.MaxValue;
            for (int i = j; i >= 0; i--)
            {
                load += _demand[customers[i]];
                if (load > _problem.Capacity) break;
                int until = (i == 0 ? Leg(0, _place[customers[0]]) : _least[i - 1] + _via[(_place[customers[i - 1]] * _places) + _place[customers[i]]]) + _chain[j] - _chain[i];
                if (until < _least[j]) (_least[j], _begin[j]) = (until, i);
            }
        }

        int travel = _least[customers.Length - 1] + _via[_place[customers[^1]] * _places];
        return (travel, Math.Max(0, travel + service - _problem.LongestDuration));
    }

    /// <summary>The places a round passes, from home to home.</summary>
    public int[] Places(ReadOnlySpan<int> customers)
    {
        _ = Of(customers);
        var places = new List<int> { 0 };
        int next = 0;
        for (int j = customers.Length - 1; j >= 0;)
        {
            int begin = _begin[j];
            places.Add(_facility[(_place[customers[j]] * _places) + next]);
            for (; j >= begin; j--) places.Add(_place[customers[j]]);
            next = places[^1];
        }

        places.Add(0);
        places.Reverse();
        return [.. places];
    }

    private int Leg(int a, int b) => _problem.Travel[(a * _places) + b];
}
