namespace HomeLine.Planning.Routing;

/// <summary>Which vehicles have visits, by day, and which still stand idle, by kind.</summary>
internal sealed class UsedVehicles
{
    private readonly int[][] _used;
    private readonly int[] _usedCount;
    private readonly int[][] _idle;
    private readonly int[] _idleCount;

    public UsedVehicles(RoutingModel model)
    {
        int kinds = model.Problem.Kinds.Length;
        KindsOfDay = [.. Enumerable.Range(0, model.Days).Select(day => Enumerable.Range(0, kinds).Where(kind => model.Problem.Kinds[kind].Day == day).ToArray())];
        _used = [.. Enumerable.Range(0, model.Days).Select(_ => new int[model.Vehicles.Length])];
        _usedCount = new int[model.Days];
        _idle = [.. Enumerable.Range(0, kinds).Select(kind => Enumerable.Range(0, model.Vehicles.Length).Where(vehicle => model.Vehicles[vehicle] == kind).Reverse().ToArray())];
        _idleCount = [.. _idle.Select(idle => idle.Length)];
    }

    /// <summary>Kinds that work on each day.</summary>
    public int[][] KindsOfDay { get; }

    /// <summary>All used vehicles.</summary>
    public int Count { get; private set; }

    public int CountOf(int day) => _usedCount[day];

    public int[] Of(int day) => _used[day];

    /// <summary>An idle vehicle of a kind, or -1.</summary>
    public int IdleOf(int kind) => _idleCount[kind] == 0 ? -1 : _idle[kind][_idleCount[kind] - 1];

    public void Enter(RouteHead[] routes, int vehicle)
    {
        ref RouteHead route = ref routes[vehicle];
        int[] idle = _idle[route.Kind];
        int place = Array.LastIndexOf(idle, vehicle, _idleCount[route.Kind] - 1);
        idle[place] = idle[--_idleCount[route.Kind]];
        route.UsedIndex = _usedCount[route.Day]++;
        _used[route.Day][route.UsedIndex] = vehicle;
        Count++;
    }

    public void Leave(RouteHead[] routes, int vehicle)
    {
        ref RouteHead route = ref routes[vehicle];
        int[] used = _used[route.Day];
        int last = used[--_usedCount[route.Day]];
        used[route.UsedIndex] = last;
        routes[last].UsedIndex = route.UsedIndex;
        route.UsedIndex = -1;
        _idle[route.Kind][_idleCount[route.Kind]++] = vehicle;
        Count--;
    }
}
