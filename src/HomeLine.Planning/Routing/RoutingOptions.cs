namespace HomeLine.Planning.Routing;

/// <summary>How to search. The values are our own defaults, chosen by measurement; docs/benchmarks.md says on what.</summary>
public sealed record RoutingOptions
{
    /// <summary>Seed of all chance.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>First temperature of the annealing, as a multiple of the mean cost of a leg of the first plan; large problems begin cooler, see <see cref="Cooling"/>.</summary>
    public double FirstTemperature { get; init; } = 3;

    /// <summary>Last temperature, in the same unit.</summary>
    public double LastTemperature { get; init; } = 0.03;

    /// <summary>Visits removed by a ruin, on average.</summary>
    public double AverageRuin { get; init; } = 10;

    /// <summary>The same for large problems (<see cref="Cooling.Large"/>): short routes with narrow windows only change when more of them are open at once.</summary>
    public double AverageRuinOfLarge { get; init; } = 16;

    /// <summary>Longest string taken out of one route.</summary>
    public int LongestString { get; init; } = 10;

    /// <summary>Requests each request is tried beside, where there are at least <see cref="NearFrom"/>; below that every position is tried.</summary>
    public int Near { get; init; } = 30;

    /// <summary>Number of requests from which only near positions are tried.</summary>
    public int NearFrom { get; init; } = 200;

    /// <summary>The same where there are several days, and so more positions to try for each request.</summary>
    public int NearFromWithDays { get; init; } = 70;

    /// <summary>Share of the ruins that may move requests to other days, where there are several.</summary>
    public double AnyDayShare { get; init; } = 0.8;

    /// <summary>Share of the budget after which the best set of all good routes seen is chosen for the first time; above 1 for never. Large problems, which cool down once, begin to choose at <see cref="FirstPolishOfLarge"/> at the earliest.</summary>
    public double FirstPolish { get; init; } = 0.4;

    /// <summary>The same for large problems.</summary>
    public double FirstPolishOfLarge { get; init; } = 0.75;

    /// <summary>Share of the budget between two such choices.</summary>
    public double PolishEvery { get; init; } = 0.15;

    /// <summary>Share of the budget kept for the last one.</summary>
    public double LastPolishReserve { get; init; } = 0.03;

    /// <summary>Limit of one choice in the solver's deterministic time, about a second each.</summary>
    public double PolishEffort { get; init; } = 2;

    /// <summary>Share of a vehicle's capacity it may be overloaded by while searching, at a price that adapts; 0 forbids it.</summary>
    public double OverloadShare { get; init; } = 0.1;

    /// <summary>The same for large problems: a price for all of a large plan swings too fast for its routes to follow, and each swing undoes what cooling has won.</summary>
    public double OverloadShareOfLarge { get; init; }

    /// <summary>An improved plan at most this share above the best one is taken through the local search; below 0 for never.</summary>
    public double DescendAbove { get; init; } = 0.002;

    /// <summary>Share of the ruins that also cut a route in two.</summary>
    public double CutShare { get; init; } = 0.2;

    /// <summary>Iterations between two meetings of searches that run side by side, see <see cref="RoutingIslands"/>.</summary>
    public int MeetEvery { get; init; } = 128_000;
}
