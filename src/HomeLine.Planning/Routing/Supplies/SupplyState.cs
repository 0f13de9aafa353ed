namespace HomeLine.Planning.Routing.Supplies;

/// <summary>All routes of the search. A move begins, takes requests out, puts requests in, and is then kept or undone.</summary>
internal sealed class SupplyState
{
    private readonly SupplyRoads _roads;
    private readonly SupplyRoute[] _saved;
    private readonly int[] _touched;
    private int _stamp;
    private long _totalBefore;
    private int _missingBefore;

    public SupplyState(SupplyProblem problem, SupplyRoads roads)
    {
        _roads = roads;
        int requests = problem.Requests.Length, kinds = problem.People.Length == 0 ? 0 : problem.People[0].Parts.Length;
        Routes = [.. problem.People.Select(_ => new SupplyRoute(requests, kinds))];
        _saved = [.. problem.People.Select(_ => new SupplyRoute(requests, kinds))];
        _touched = new int[Routes.Length];
        PersonOf = new int[requests];
        Array.Fill(PersonOf, -1);
        Missing = requests;
        for (int person = 0; person < Routes.Length; person++) roads.Retime(person, Routes[person]);
    }

    public SupplyRoute[] Routes { get; }

    /// <summary>Who makes each request, or -1.</summary>
    public int[] PersonOf { get; }

    /// <summary>Cost of all routes, without what is left out.</summary>
    public long Total { get; private set; }
    public int Missing { get; private set; }

    public int TouchedCount { get; private set; }
    public int TouchedAt(int index) => _touched[index];

    public void Begin()
    {
        _stamp++;
        TouchedCount = 0;
        (_totalBefore, _missingBefore) = (Total, Missing);
    }

    /// <summary>Back to where the move began.</summary>
    public void Undo()
    {
        for (int i = 0; i < TouchedCount; i++) Assign(_touched[i], -1);
        for (int i = 0; i < TouchedCount; i++)
        {
            Routes[_touched[i]].CopyFrom(_saved[_touched[i]]);
            Assign(_touched[i], _touched[i]);
        }

        (Total, Missing) = (_totalBefore, _missingBefore);
        Begin();
    }

    public void Insert(int request, in SupplySpot spot)
    {
        SupplyRoute route = Touch(spot.Person);
        Total -= route.Cost;
        route.InsertAt(spot.At, request);
        if (spot.PassAt >= 0) route.InsertAt(spot.PassAt, SupplyPlan.Pass);
        PersonOf[request] = spot.Person;
        Missing--;
        if (!_roads.Settle(spot.Person, route)) Empty(spot.Person);
        Total += route.Cost;
    }

    /// <summary>Takes a request out; times are right again after <see cref="SettleTouched"/>.</summary>
    public void Remove(int request)
    {
        int person = PersonOf[request];
        SupplyRoute route = Touch(person);
        route.RemoveAt(Array.IndexOf(route.Stops, request, 0, route.Count));
        PersonOf[request] = -1;
        Missing++;
    }

    /// <summary>Brings touched routes up to date after removals. One that cannot be made any longer, which a matrix with shorter ways round may cause, is emptied.</summary>
    public void SettleTouched()
    {
        for (int i = 0; i < TouchedCount; i++)
        {
            SupplyRoute route = Routes[_touched[i]];
            Total -= route.Cost;
            if (!_roads.Settle(_touched[i], route)) Empty(_touched[i]);
            Total += route.Cost;
        }
    }

    /// <summary>Replaces a person's route; the pass is placed anew.</summary>
    public void Take(int person, ReadOnlySpan<int> requests)
    {
        SupplyRoute route = Touch(person);
        Total -= route.Cost;
        Empty(person);
        foreach (int request in requests)
        {
            route.InsertAt(route.Count, request);
            PersonOf[request] = person;
            Missing--;
        }

        if (!_roads.Settle(person, route)) Empty(person);
        Total += route.Cost;
    }

    public void Empty(int person)
    {
        SupplyRoute route = Touch(person);
        foreach (int stop in route.Stops.AsSpan(0, route.Count))
            if (stop >= 0) Missing++;
        Assign(person, -1);
        route.Count = 0;
        route.PassAt = -1;
        _roads.Retime(person, route);
    }

    private void Assign(int person, int to)
    {
        SupplyRoute route = Routes[person];
        for (int i = 0; i < route.Count; i++)
            if (route.Stops[i] >= 0) PersonOf[route.Stops[i]] = to;
    }

    private SupplyRoute Touch(int person)
    {
        SupplyRoute route = Routes[person];
        if (route.Stamp == _stamp) return route;
        route.Stamp = _stamp;
        _saved[person].CopyFrom(route);
        _touched[TouchedCount++] = person;
        return route;
    }
}
