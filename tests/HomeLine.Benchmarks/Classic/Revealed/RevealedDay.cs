namespace HomeLine.Benchmarks.Classic.Revealed;

/// <summary>A day whose requests become known while it goes on (Lackner 2004): a one-day instance, and when each request arrives.</summary>
/// <param name="Nodes">Node 0 is the base.</param>
/// <param name="Vehicles">Most vehicles.</param>
/// <param name="Capacity">Capacity of each.</param>
/// <param name="Known">For each node the time from which it is known; -1 for before the day.</param>
/// <param name="Distance">Convention.</param>
internal sealed record RevealedDay(IReadOnlyList<PlaneNode> Nodes, int Vehicles, int Capacity, IReadOnlyList<double> Known, Distance Distance);

/// <summary>A vehicle's day as it came about: stops with the times it left for them.</summary>
internal sealed record DrivenRoute(IReadOnlyList<(int Node, double Left)> Stops);
