using System.Collections.Immutable;

namespace HomeLine.Planning.Routing;

/// <summary>One vehicle's route: requests in the order they are visited.</summary>
/// <param name="Kind">Index of the vehicle kind; the kind tells the day.</param>
/// <param name="Requests">Indices of the requests; never empty.</param>
public sealed record PlannedRoute(int Kind, ImmutableArray<int> Requests);

/// <summary>Routes for a problem.</summary>
/// <param name="Routes">Every route that is used.</param>
/// <param name="LeftOut">Requests that are not served, ascending.</param>
/// <param name="Cost">Cost of the routes plus the prices of what is left out. A request that must be served and is not adds no price; see <paramref name="Missing"/>.</param>
/// <param name="Missing">How many of the left-out requests had to be served; 0 in a complete plan.</param>
public sealed record RoutingPlan(ImmutableArray<PlannedRoute> Routes, ImmutableArray<int> LeftOut, long Cost, int Missing);
