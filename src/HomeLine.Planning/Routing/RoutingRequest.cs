using System.Collections.Immutable;

namespace HomeLine.Planning.Routing;

/// <summary>One request for care: a place to be visited once, or once on every day of one of its day patterns. All times share one whole-number unit.</summary>
/// <param name="Place">Index of the place in the travel matrices.</param>
/// <param name="Demand">What the visit takes of the vehicle's capacity, at least 0.</param>
/// <param name="Service">Time the visit takes, at least 0.</param>
/// <param name="Opens">Earliest start of service, included. Arriving earlier waits.</param>
/// <param name="Closes">Latest start of service, included.</param>
public sealed record RoutingRequest(int Place, int Demand, int Service, int Opens, int Closes)
{
    /// <summary>Sets of days, bit <c>d</c> for day <c>d</c>; the search picks one and visits on each of its days.</summary>
    public ImmutableArray<int> DayPatterns { get; init; } = [1];

    /// <summary>Indices of the vehicle kinds that may serve it; default means all.</summary>
    public ImmutableArray<int> EligibleKinds { get; init; }

    /// <summary>What leaving it out costs, in the unit of the cost matrix; null when it must be served.</summary>
    public int? PriceOfLeavingOut { get; init; }
}
