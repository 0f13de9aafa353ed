namespace HomeLine.Planning.Routing;

/// <summary>What a move changed, as it was before: enough to take the move back.</summary>
internal sealed class MoveLog
{
    private readonly int[] _routes;
    private readonly int[] _start;
    private readonly RouteHead[] _heads;
    private readonly int[] _requests;
    private readonly int[] _patterns;

    public MoveLog(RoutingModel model)
    {
        int vehicles = model.Vehicles.Length, links = model.Visits + (2 * vehicles);
        _routes = new int[vehicles];
        _start = new int[vehicles + 1];
        _heads = new RouteHead[vehicles];
        // A request may leave and return in one move.
        _requests = new int[2 * model.Requests];
        _patterns = new int[2 * model.Requests];
        Ids = new int[links];
        Links = new Link[links];
        Fore = model.UsesDuration ? new TimeSegment[links] : [];
        Back = model.UsesDuration ? new TimeSegment[links] : [];
    }

    public int[] Ids { get; }
    public Link[] Links { get; }
    public TimeSegment[] Fore { get; }
    public TimeSegment[] Back { get; }
    public int Routes { get; private set; }
    public int Choices { get; private set; }
    public long Total { get; set; }
    public int Served { get; set; }

    public int RouteAt(int index) => _routes[index];
    public ref RouteHead HeadAt(int index) => ref _heads[index];
    public int StartOf(int index) => _start[index];
    public int RequestAt(int index) => _requests[index];
    public int PatternAt(int index) => _patterns[index];

    public long Overload { get; set; }

    public void Begin(long total, long overload, int served)
    {
        Overload = overload;
        Routes = 0;
        Choices = 0;
        Total = total;
        Served = served;
    }

    /// <summary>Where the copy of the next route starts.</summary>
    public int Next => _start[Routes];

    public void Add(int vehicle, in RouteHead head, int links)
    {
        _routes[Routes] = vehicle;
        _heads[Routes] = head;
        _start[Routes + 1] = _start[Routes] + links;
        Routes++;
    }

    public void Remember(int request, int pattern)
    {
        _requests[Choices] = request;
        _patterns[Choices++] = pattern;
    }
}
