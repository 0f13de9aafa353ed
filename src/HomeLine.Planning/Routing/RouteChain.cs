namespace HomeLine.Planning.Routing;

/// <summary>One link of a route's chain: a visit or an end point. Half a cache line, because a scan reads all of it.</summary>
internal struct Link
{
    /// <summary>The neighbours in the chain.</summary>
    public int Next, Prev;

    /// <summary>The vehicle, or -1 when the visit is not made.</summary>
    public int Route;

    /// <summary>Where it is.</summary>
    public int Place;

    /// <summary>Earliest departure: earliest start of service plus service.</summary>
    public int Ready;

    /// <summary>Latest start of service that keeps the rest of the route in time.</summary>
    public int Late;

    /// <summary>Cost to the next link; 0 in an empty route.</summary>
    public int Edge;

    /// <summary>Demand up to and including this link; only kept by the local search.</summary>
    public int Load;
}

/// <summary>A vehicle and the sum of what it does.</summary>
internal struct RouteHead
{
    /// <summary>End points of the chain.</summary>
    public int First, Last;

    /// <summary>Index of the vehicle's kind, its day and what it may carry.</summary>
    public int Kind, Day, Capacity;

    /// <summary>Longest duration, or <see cref="int.MaxValue"/>.</summary>
    public int LongestDuration;

    /// <summary>The duration that is part of the total cost; 0 when durations cost nothing.</summary>
    public int PricedDuration;

    /// <summary>Demand and number of visits.</summary>
    public int Load, Count;

    /// <summary>Index in the day's list of used vehicles, or -1.</summary>
    public int UsedIndex;

    /// <summary>The move that last touched it.</summary>
    public int Stamp;
}
