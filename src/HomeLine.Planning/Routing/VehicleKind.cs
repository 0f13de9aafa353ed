namespace HomeLine.Planning.Routing;

/// <summary>Interchangeable vehicles (or people) of one day: same base, same hours, same capacity.</summary>
/// <param name="Day">The day it works, from 0.</param>
/// <param name="Start">Place where its routes begin.</param>
/// <param name="End">Place where its routes end.</param>
/// <param name="Count">How many there are, at least 0.</param>
/// <param name="Capacity">Most demand on one route, included.</param>
/// <param name="Opens">Earliest departure, included.</param>
/// <param name="Closes">Latest arrival at the end, included.</param>
public sealed record VehicleKind(int Day, int Start, int End, int Count, int Capacity, int Opens, int Closes)
{
    /// <summary>Longest time from departure to arrival with the best departure, included; null when only the hours bound it.</summary>
    public int? LongestDuration { get; init; }

    /// <summary>Cost of using one vehicle at all, in the unit of the cost matrix.</summary>
    public int FixedCost { get; init; }
}
