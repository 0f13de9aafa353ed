using System.Diagnostics;

namespace HomeLine.Planning.Routing;

/// <summary>
/// The routes of the search, changed in place. A move begins, takes visits out, puts visits in, and is then kept or undone: every route is copied to a log when
/// a move first touches it.
/// </summary>
internal sealed partial class RoutingState
{
    private readonly RoutingModel _model;
    private readonly UsedVehicles _used;

    public RoutingState(RoutingModel model)
    {
        _model = model;
        int vehicles = model.Vehicles.Length, links = model.Visits + (2 * vehicles);
        Links = new Link[links];
        Routes = new RouteHead[vehicles];
        if (model.UsesDuration)
        {
            Fore = new TimeSegment[links];
            Back = new TimeSegment[links];
        }

        Chosen = new int[model.Requests];
        Absent = new int[model.Requests];
        _absentAt = new int[model.Requests];
        _used = new UsedVehicles(model);
        _log = new MoveLog(model);
        for (int v = 0; v < model.Visits; v++)
            Links[v] = new Link { Route = -1, Next = -1, Prev = -1, Place = model.Of[v].Place };
        for (int r = 0; r < vehicles; r++) Open(r);
        for (int r = 0; r < model.Requests; r++) SetAbsent(r);
    }

    public RoutingModel Model => _model;
    public Link[] Links { get; }
    public RouteHead[] Routes { get; }

    /// <summary>Time segments from the start of the route up to each link and from each link to the end; empty when durations do not matter.</summary>
    public TimeSegment[] Fore { get; } = [];
    public TimeSegment[] Back { get; } = [];

    /// <summary>Day pattern each request is served in; 0 when it is left out.</summary>
    public int[] Chosen { get; }

    /// <summary>Requests left out, the first <see cref="AbsentCount"/> cells.</summary>
    public int[] Absent { get; }
    public int AbsentCount { get; private set; }

    /// <summary>Cost of the routes plus the prices of what is left out; must-serve requests count with their high price.</summary>
    public long Total { get; private set; }

    /// <summary>Demand above what the vehicles may carry; a plan worth keeping has none.</summary>
    public long Overload { get; private set; }

    /// <summary>What a unit of overload counts while searching, and how much one vehicle may have; nothing is allowed at first.</summary>
    public int OverloadPrice { get; set; }
    public int MostOverload { get; set; }

    /// <summary>What the search compares: the total and the price of overload.</summary>
    public long Judged => Total + (Overload * OverloadPrice);

    /// <summary>Requests left out that must be served.</summary>
    public int Missing { get; private set; }

    /// <summary>The total without the prices of those: what the caller calls cost.</summary>
    public long Cost => Total - _priceOfMissing;

    private long _priceOfMissing;

    /// <summary>The part of the total that is the price of what is left out.</summary>
    public long PriceOfAbsent()
    {
        long price = 0;
        for (int i = 0; i < AbsentCount; i++) price += _model.LeavingOut[Absent[i]];
        return price;
    }

    /// <summary>Visits made.</summary>
    public int Served { get; private set; }

    public UsedVehicles Used => _used;

    public bool IsServed(int request) => Chosen[request] != 0;

    /// <summary>Takes a visit out of its chain. Times are only right again after <see cref="RetimeTouched"/>.</summary>
    public void Remove(int visit)
    {
        ref Link link = ref Links[visit];
        Touch(link.Route);
        ref RouteHead route = ref Routes[link.Route];
        ref Link before = ref Links[link.Prev];
        ref Link after = ref Links[link.Next];
        int edge = route.Count == 1 ? 0 : _model.Cost[(before.Place * _model.Places) + after.Place];
        Total += edge - before.Edge - link.Edge;
        before.Edge = edge;
        before.Next = link.Next;
        after.Prev = link.Prev;
        AddLoad(ref route, -_model.Of[visit].Demand);
        Served--;
        if (--route.Count == 0)
        {
            Total -= _model.Problem.Kinds[route.Kind].FixedCost;
            _used.Leave(Routes, link.Route);
        }

        link.Route = -1;
    }

    /// <summary>Puts a visit behind a link and brings times up to date.</summary>
    public void Insert(int visit, int behind)
    {
        ref Link before = ref Links[behind];
        int vehicle = before.Route;
        Touch(vehicle);
        ref RouteHead route = ref Routes[vehicle];
        ref Link link = ref Links[visit];
        ref Link after = ref Links[before.Next];
        link.Route = vehicle;
        link.Prev = behind;
        link.Next = before.Next;
        int into = _model.Cost[(before.Place * _model.Places) + link.Place], outOf = _model.Cost[(link.Place * _model.Places) + after.Place];
        Total += into + outOf - before.Edge;
        before.Edge = into;
        link.Edge = outOf;
        after.Prev = visit;
        before.Next = visit;
        AddLoad(ref route, _model.Of[visit].Demand);
        Served++;
        if (route.Count++ == 0)
        {
            Total += _model.Problem.Kinds[route.Kind].FixedCost;
            _used.Enter(Routes, vehicle);
        }

        if (_model.UsesDuration) Retime(vehicle);
        else Spread(visit);
    }

    private void AddLoad(ref RouteHead route, int demand)
    {
        Overload -= Math.Max(0, route.Load - route.Capacity);
        route.Load += demand;
        Overload += Math.Max(0, route.Load - route.Capacity);
    }

    /// <summary>Brings the times of every route of this move up to date after removals.</summary>
    public void RetimeTouched()
    {
        for (int i = 0; i < _log.Routes; i++) Retime(_log.RouteAt(i));
    }

    /// <summary>Serves a request in a pattern (its visits are inserted by the caller), or leaves it out with pattern 0.</summary>
    public void Choose(int request, int pattern)
    {
        if (Chosen[request] == pattern) return;
        _log.Remember(request, Chosen[request]);
        SetChosen(request, pattern);
    }

    private void SetChosen(int request, int pattern)
    {
        bool was = Chosen[request] != 0;
        Chosen[request] = pattern;
        if (was && pattern == 0) SetAbsent(request);
        else if (!was && pattern != 0) SetPresent(request);
    }

    private readonly int[] _absentAt;

    private bool MustServe(int request) => _model.Problem.Requests[request].PriceOfLeavingOut is null;

    private void SetAbsent(int request)
    {
        _absentAt[request] = AbsentCount;
        Absent[AbsentCount++] = request;
        if (MustServe(request))
        {
            Missing++;
            _priceOfMissing += _model.LeavingOut[request];
        }

        Total += _model.LeavingOut[request];
    }

    private void SetPresent(int request)
    {
        if (MustServe(request))
        {
            Missing--;
            _priceOfMissing -= _model.LeavingOut[request];
        }

        int hole = _absentAt[request], last = Absent[--AbsentCount];
        Absent[hole] = last;
        _absentAt[last] = hole;
        Total -= _model.LeavingOut[request];
    }

    private void Open(int vehicle)
    {
        VehicleKind kind = _model.KindOf(vehicle);
        int first = _model.FirstOf(vehicle), last = _model.LastOf(vehicle);
        Links[first] = new Link { Route = vehicle, Next = last, Prev = -1, Place = kind.Start };
        Links[last] = new Link { Route = vehicle, Next = -1, Prev = first, Place = kind.End };
        Routes[vehicle] = new RouteHead
        {
            First = first,
            Last = last,
            Kind = _model.Vehicles[vehicle],
            Day = kind.Day,
            Capacity = kind.Capacity,
            LongestDuration = kind.LongestDuration ?? int.MaxValue,
            UsedIndex = -1,
        };
        Retime(vehicle);
        Debug.Assert(Links[last].Ready <= kind.Closes || kind.Start != kind.End, "a vehicle that cannot even stay at home");
    }
}
