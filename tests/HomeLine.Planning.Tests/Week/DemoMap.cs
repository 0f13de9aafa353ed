using System.Collections.Immutable;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Week;

/// <summary>The invented county of the demonstration week: one river with two bridges, one ridge with two passes.</summary>
internal static class DemoMap
{
    public static readonly ImmutableArray<MapBarrier> Barriers =
    [
        new("river", BarrierRun.NorthSouth, 9, double.NegativeInfinity, double.PositiveInfinity,
            [new Crossing("South Bridge", 12), new Crossing("North Bridge", 30)]),
        new("ridge", BarrierRun.WestEast, 28, 9, double.PositiveInfinity,
            [new Crossing("Larch Pass", 33), new Crossing("Shore Road", 57)]),
    ];
}
