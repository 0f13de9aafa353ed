namespace HomeLine.Planning.Routing.Supplies;

/// <summary>Times and supplies of a route: what is fixed about each stop, the segments, and where the depot is passed best.</summary>
internal sealed class SupplyRoads
{
    /// <summary>Own value: a unit of travel counts a thousandth more than its time, so that near requests are known to be near where waiting hides it.</summary>
    private const int TravelShare = 1_000;

    private readonly SupplyProblem _problem;
    private readonly int[] _place;
    private readonly TimeSegment[] _own, _hours;
    private readonly int[][] _parts, _stock;
    private readonly bool[] _lacksTool, _able;

    public SupplyRoads(SupplyProblem problem)
    {
        _problem = problem;
        // The pass is numbered behind the requests.
        _place = [.. problem.Requests.Select(request => request.Place), problem.Depot.Place];
        _own = [.. problem.Requests.Select(request => TimeSegment.Of(request.Service, request.Opens, request.Closes)), TimeSegment.Of(0, problem.Depot.Opens, problem.Depot.Closes)];
        _hours = [.. problem.People.Select(person => TimeSegment.Of(0, person.Opens, person.Closes))];
        _parts = [.. problem.Requests.Select(request => request.Parts.ToArray())];
        _stock = [.. problem.People.Select(person => person.Parts.ToArray())];
        _lacksTool = [.. problem.People.SelectMany(person => problem.Requests.Select(request => (request.Tools & ~person.Tools) != 0))];
        _able = [.. Enumerable.Range(0, problem.People.Length).SelectMany(person => problem.Requests.Select(request => request.Able.Contains(person)))];
    }

    public bool Able(int person, int request) => _able[(person * _parts.Length) + request];

    /// <summary>Whether the request can be made before the pass with what is left of the person's own supplies.</summary>
    public bool CarriesToo(int person, SupplyRoute route, int request)
    {
        if (_lacksTool[(person * _parts.Length) + request]) return false;
        for (int kind = 0; kind < route.Used.Length; kind++)
            if (route.Used[kind] + _parts[request][kind] > _stock[person][kind]) return false;
        return true;
    }

    public static long Cost(int duration, long travel) => duration + (travel / TravelShare);

    public TimeSegment Own(int stop) => _own[stop < 0 ? _own.Length - 1 : stop];

    /// <summary>Travel between the stops of a route at two indices; one below 0 or behind the last is the home.</summary>
    public int Leg(int person, SupplyRoute route, int from, int to) => Between(PlaceAt(person, route, from), PlaceAt(person, route, to));

    public int LegTo(int person, SupplyRoute route, int from, int stop) => Between(PlaceAt(person, route, from), Place(stop));

    public int LegFrom(int person, SupplyRoute route, int stop, int to) => Between(Place(stop), PlaceAt(person, route, to));

    public int LegFromPass(int request) => Between(_problem.Depot.Place, Place(request));

    /// <summary>Brings times, parts and cost up to date with the pass where it is; false when a window is missed.</summary>
    public bool Retime(int person, SupplyRoute route)
    {
        bool fits = true;
        Array.Clear(route.Used);
        route.Fore[0] = route.Back[route.Count] = _hours[person];
        long travel = 0;
        for (int i = 0; i < route.Count; i++)
        {
            int leg = Leg(person, route, i - 1, i);
            travel += leg;
            fits &= TimeSegment.TryJoin(route.Fore[i], leg, Own(route.Stops[i]), out route.Fore[i + 1]);
            if (i < route.PassAt || route.PassAt < 0) Use(route, route.Stops[i]);
        }

        int home = route.Count == 0 ? 0 : Leg(person, route, route.Count - 1, route.Count);
        fits &= TimeSegment.TryJoin(route.Fore[route.Count], home, _hours[person], out TimeSegment whole);
        for (int i = route.Count - 1; i >= 0; i--) TimeSegment.TryJoin(Own(route.Stops[i]), Leg(person, route, i, i + 1), route.Back[i + 1], out route.Back[i]);
        route.Travel = travel + home;
        route.Duration = route.Count == 0 ? 0 : whole.Duration;
        route.Cost = Cost(route.Duration, route.Travel);
        return fits;
    }

    /// <summary>Takes the pass out and puts it back where the day is shortest, if it is needed at all; false when the stops cannot be made.</summary>
    public bool Settle(int person, SupplyRoute route)
    {
        if (route.PassAt >= 0) route.RemoveAt(route.PassAt);
        bool fits = Retime(person, route);
        int latest = Latest(person, route);
        if (!fits || latest == route.Count) return fits;
        int best = -1;
        long least = long.MaxValue;
        for (int at = 0; at <= latest; at++)
        {
            int into = LegTo(person, route, at - 1, SupplyPlan.Pass), outOf = LegFrom(person, route, SupplyPlan.Pass, at);
            if (!TimeSegment.TryJoin(route.Fore[at], into, Own(SupplyPlan.Pass), out TimeSegment head)) break;
            if (!TimeSegment.TryJoin(head, outOf, route.Back[at], out TimeSegment whole)) continue;
            long cost = Cost(whole.Duration, route.Travel + into + outOf - Leg(person, route, at - 1, at));
            if (cost < least) (best, least) = (at, cost);
        }

        if (best < 0) return false;
        route.InsertAt(best, SupplyPlan.Pass);
        return Retime(person, route);
    }

    /// <summary>How many stops can be made with what the person has at home.</summary>
    private int Latest(int person, SupplyRoute route)
    {
        Array.Clear(route.Used);
        for (int i = 0; i < route.Count; i++)
        {
            if (!CarriesToo(person, route, route.Stops[i])) return i;
            Use(route, route.Stops[i]);
        }

        return route.Count;
    }

    private void Use(SupplyRoute route, int request)
    {
        for (int kind = 0; kind < route.Used.Length; kind++) route.Used[kind] += _parts[request][kind];
    }

    private int Place(int stop) => _place[stop < 0 ? _place.Length - 1 : stop];

    private int PlaceAt(int person, SupplyRoute route, int index) => index < 0 || index >= route.Count ? _problem.People[person].Home : Place(route.Stops[index]);

    private int Between(int from, int to) => _problem.Travel[(from * _problem.Places) + to];
}
