namespace HomeLine.Planning.Routing;

/// <summary>
/// A request another one is tried beside, with what no move changes about the two, read in one go. The floors spare most positions the look at the matrix: where the triangle
/// inequality holds, squeezing in beside a far request next to which the route is short costs about twice the way to it.
/// </summary>
internal struct NearRequest
{
    /// <summary>The request near by.</summary>
    public int Other;

    /// <summary>Cost from there and to there.</summary>
    public int Into, OutOf;

    /// <summary>Latest departure there that is in time here; least latest start there when it comes next.</summary>
    public int LastReady, LeastLate;

    /// <summary>Going right behind it, or right before it, adds at least this less twice the cost of the leg that is cut.</summary>
    public int FloorBehind, FloorBefore;

    /// <summary>The lists of all requests.</summary>
    public static NearRequest[][] Lists(RoutingModel model, int count) =>
        [.. Neighbours.ByCostAndTime(model, count).Select((near, request) => near.Select(other => Of(model, request, other)).ToArray())];

    private static NearRequest Of(RoutingModel model, int request, int other)
    {
        VisitFacts here = model.Of[request], there = model.Of[other];
        int into = model.Cost[(there.Place * model.Places) + here.Place], outOf = model.Cost[(here.Place * model.Places) + there.Place];
        return new NearRequest
        {
            Other = other,
            Into = into,
            OutOf = outOf,
            LastReady = here.Closes - model.Time[(there.Place * model.Places) + here.Place],
            LeastLate = here.Opens + here.Service + model.Time[(here.Place * model.Places) + there.Place],
            FloorBehind = (2 * into) - Breach(model.Cost, model.Places, here.Place, there.Place, into),
            FloorBefore = (2 * outOf) - Breach(model.CostInto, model.Places, here.Place, there.Place, outOf),
        };
    }

    /// <summary>By how much at most the leg between the two exceeds the way over a third place; not above 0 where the triangle inequality holds.</summary>
    private static int Breach(int[] cost, int places, int here, int there, int leg)
    {
        ReadOnlySpan<int> ofHere = cost.AsSpan(here * places, places), ofThere = cost.AsSpan(there * places, places);
        int shortest = int.MaxValue;
        for (int third = 0; third < ofHere.Length && third < ofThere.Length; third++) shortest = Math.Min(shortest, ofHere[third] + ofThere[third]);
        return leg - shortest;
    }
}
