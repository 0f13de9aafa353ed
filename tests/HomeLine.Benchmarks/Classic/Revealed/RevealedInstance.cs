using System.Globalization;
using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic.Revealed;

/// <summary>A day that becomes known while it goes on, ready to be lived through. One thread, whatever is asked.</summary>
internal sealed record RevealedInstance(string Name, RevealedDay Day) : Instance(Name, "revealed")
{
    /// <summary>Own value: share of the seconds for the plan at the start of the day, when most is decided; the other moments share the rest.</summary>
    private const double StartShare = 0.2;

    /// <summary>The value for somebody who knew everything beforehand.</summary>
    public override IReadOnlyList<string> Conventions => ["a-posteriori dist-double"];

    /// <summary>How much of a hundred requests becomes known during the day.</summary>
    public override string Class => $"{100.0 * Day.Known.Count(known => known >= 0) / Math.Max(1, Day.Known.Count - 1):0} % revealed";

    public override Solved Solve(Wanted wanted)
    {
        var replay = new RevealedReplay(Day);
        double others = wanted.Seconds * (1 - StartShare) / Math.Max(1, replay.Moments.Length - 1);
        IReadOnlyList<DrivenRoute> routes = replay.Live(
            moment => new TimeBudget(moment == 0 ? wanted.Seconds * StartShare : others, wanted.Wall),
            new RoutingOptions { Seed = wanted.Seed, FirstPolish = 2 });
        int[] served = [.. routes.SelectMany(route => route.Stops).Select(stop => stop.Node)];
        return new Solved(
            RevealedCheck.Judge(Day, routes),
            [.. routes.Select((route, i) => new NamedRoute($"route {i + 1}", [.. route.Stops.Select(stop => stop.Node.ToString(CultureInfo.InvariantCulture))]))],
            [.. Enumerable.Range(1, Day.Nodes.Count - 1).Except(served).Select(node => node.ToString(CultureInfo.InvariantCulture))],
            replay.Iterations);
    }
}
