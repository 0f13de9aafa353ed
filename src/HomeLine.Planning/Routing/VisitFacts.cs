namespace HomeLine.Planning.Routing;

/// <summary>What is fixed about one visit, side by side in memory.</summary>
internal readonly struct VisitFacts(int request, int day, RoutingRequest asked, int nearest)
{
    public readonly int Request = request, Day = day, Place = asked.Place, Demand = asked.Demand, Service = asked.Service;
    public readonly int Opens = asked.Opens, Closes = asked.Closes;

    /// <summary>Latest departure from anywhere that can still be in time here.</summary>
    public readonly int LastDeparture = asked.Closes - nearest;
}
