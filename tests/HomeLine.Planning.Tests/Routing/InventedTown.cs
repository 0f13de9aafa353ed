using System.Collections.Immutable;
using HomeLine.Planning.Routing;

namespace HomeLine.Planning.Tests.Routing;

/// <summary>Invented routing problems, the same for the same seed.</summary>
internal static class InventedTown
{
    /// <summary>Homes on a square of 100 by 100 around a base in the middle, windows of differing width, some demand.</summary>
    public static RoutingProblem Simple(ulong seed, int homes, int vehicles = 8)
    {
        var chance = new Chance(seed);
        (int[] matrix, int places) = Square(chance, homes);
        return new RoutingProblem(places, matrix, matrix, [.. Enumerable.Range(1, homes).Select(place => Request(chance, place))], [new VehicleKind(0, 0, 0, vehicles, 40, 0, 600)]);
    }

    /// <summary>A bit of everything: two bases, days, patterns, skills, optional requests, longest durations, prices for durations.</summary>
    public static RoutingProblem Rich(ulong seed, int homes)
    {
        var chance = new Chance(seed);
        int days = 1 + chance.Next(3);
        (int[] matrix, int places) = Square(chance, homes);
        var kinds = new List<VehicleKind>();
        for (int day = 0; day < days; day++)
            for (int k = 0; k < 2; k++)
                kinds.Add(new VehicleKind(day, k, chance.Next(2), 1 + chance.Next(3), 20 + chance.Next(30), chance.Next(40), 500 + chance.Next(100))
                {
                    LongestDuration = chance.Next(3) == 0 ? 250 + chance.Next(100) : null,
                    FixedCost = chance.Next(2) * chance.Next(50),
                });
        ImmutableArray<RoutingRequest> requests = [.. Enumerable.Range(1, homes).Select(place => Request(chance, place) with
        {
            DayPatterns = Patterns(chance, days),
            EligibleKinds = chance.Next(3) == 0 ? [.. Enumerable.Range(0, kinds.Count).Where(_ => chance.Next(3) > 0)] : default,
            PriceOfLeavingOut = chance.Next(4) == 0 ? chance.Next(120) : null,
        })];
        return new RoutingProblem(places, matrix, matrix, requests, [.. kinds]) { DurationIsCost = chance.Next(3) == 0 };
    }

    private static RoutingRequest Request(Chance chance, int place)
    {
        int opens = 100 + chance.Next(300);
        return new RoutingRequest(place, 1 + chance.Next(9), 5 + chance.Next(20), opens, opens + 30 + chance.Next(200));
    }

    private static ImmutableArray<int> Patterns(Chance chance, int days)
    {
        int all = (1 << days) - 1;
        return [.. Enumerable.Range(0, 1 + chance.Next(3)).Select(_ => 1 + chance.Next(all)).Distinct()];
    }

    private static (int[] Matrix, int Places) Square(Chance chance, int homes)
    {
        int places = homes + 1;
        (int X, int Y)[] at = [.. Enumerable.Range(0, places).Select(i => i == 0 ? (50, 50) : (chance.Next(100), chance.Next(100)))];
        var matrix = new int[places * places];
        for (int a = 0; a < places; a++)
            for (int b = 0; b < places; b++)
                matrix[(a * places) + b] = Math.Abs(at[a].X - at[b].X) + Math.Abs(at[a].Y - at[b].Y);
        return (matrix, places);
    }
}
