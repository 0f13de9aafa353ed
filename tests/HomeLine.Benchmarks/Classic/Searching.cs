using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Runs the routing search within the seconds wanted; several threads exchange their best plans.</summary>
internal static class Searching
{
    public static (RoutingPlan Plan, long Iterations) Run(RoutingProblem problem, Wanted wanted)
    {
        var islands = new RoutingIslands(problem, Options(wanted), wanted.Threads);
        RoutingPlan plan = islands.Run(() => wanted.OfThisThread());
        return (plan, islands.Iterations);
    }

    private static RoutingOptions Options(Wanted wanted)
    {
        var defaults = new RoutingOptions();
        return defaults with
        {
            Seed = wanted.Seed,
            FirstTemperature = wanted.Tuning.First ?? defaults.FirstTemperature,
            LastTemperature = wanted.Tuning.Last ?? defaults.LastTemperature,
            AverageRuin = wanted.Tuning.Ruin ?? defaults.AverageRuin,
            AverageRuinOfLarge = wanted.Tuning.Ruin ?? defaults.AverageRuinOfLarge,
            Near = wanted.Tuning.Near ?? defaults.Near,
            OverloadShare = wanted.Tuning.Overload ?? defaults.OverloadShare,
            OverloadShareOfLarge = wanted.Tuning.Overload ?? defaults.OverloadShareOfLarge,
            DescendAbove = wanted.Tuning.Descend ?? defaults.DescendAbove,
            AnyDayShare = wanted.Tuning.AnyDay ?? defaults.AnyDayShare,
            FirstPolish = wanted.Tuning.Polish ?? defaults.FirstPolish,
        };
    }
}
