using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Runs the routing search within the seconds wanted.</summary>
internal static class Searching
{
    public static (RoutingPlan Plan, long Iterations) Run(RoutingProblem problem, Wanted wanted)
    {
        RoutingOptions options = Options(wanted);
        return new Islands<RoutingPlan>(wanted).Best(
            (seed, budget) =>
            {
                var search = new RoutingSearch(problem, options with { Seed = seed });
                return (search.Run(budget), search.Iterations);
            },
            plan => plan.Cost + (plan.Missing * 1_000_000_000L));
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
            Near = wanted.Tuning.Near ?? defaults.Near,
            OverloadShare = wanted.Tuning.Overload ?? defaults.OverloadShare,
            DescendAbove = wanted.Tuning.Descend ?? defaults.DescendAbove,
            AnyDayShare = wanted.Tuning.AnyDay ?? defaults.AnyDayShare,
            FirstPolish = wanted.Tuning.Polish ?? defaults.FirstPolish,
        };
    }
}
