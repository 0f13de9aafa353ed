using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Runs the routing search within the seconds wanted.</summary>
internal static class Searching
{
    public static (RoutingPlan Plan, long Iterations) Run(RoutingProblem problem, Wanted wanted)
    {
        var search = new RoutingSearch(problem, Options(wanted));
        RoutingPlan plan = search.Run(new TimeBudget(wanted.Seconds, wanted.Wall, wanted.AlreadyUsed));
        return (plan, search.Iterations);
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
            FirstPolish = wanted.Tuning.Polish ?? defaults.FirstPolish,
        };
    }
}
