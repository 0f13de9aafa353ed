namespace HomeLine.Planning.Routing;

/// <summary>What a choice of routes has to cover.</summary>
/// <param name="Visits">Number of visits; routes hold their indices.</param>
/// <param name="Patterns">For each request the alternatives it can be served in, each a set of visits; every visit belongs to one request.</param>
/// <param name="LeavingOut">For each request what leaving it out costs, or null when it must be served.</param>
/// <param name="Vehicles">How many vehicles there are of each kind.</param>
public sealed record PoolProblem(int Visits, int[][][] Patterns, long?[] LeavingOut, int[] Vehicles);
