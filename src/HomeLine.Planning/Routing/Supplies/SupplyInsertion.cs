namespace HomeLine.Planning.Routing.Supplies;

/// <summary>Where a request would go: the person, the index of the stop it comes before, and the index at which the depot is newly passed, or -1.</summary>
internal readonly record struct SupplySpot(int Person, int At, int PassAt, long Added)
{
    public static SupplySpot None => new(-1, 0, -1, long.MaxValue);
}

/// <summary>
/// The cheapest position of a request over all people. In constant time for each position where the depot is passed as before; where a route passes by the depot only
/// because of the request, both positions are tried together.
/// </summary>
internal sealed class SupplyInsertion(SupplyState state, SupplyRoads roads, Chance chance)
{
    /// <summary>Own value: one position in so many is overlooked.</summary>
    private const int Overlooked = 60;

    public SupplySpot Best(int request)
    {
        SupplySpot best = SupplySpot.None;
        for (int person = 0; person < state.Routes.Length; person++)
        {
            if (!roads.Able(person, request)) continue;
            SupplyRoute route = state.Routes[person];
            bool before = roads.CarriesToo(person, route, request);
            if (before || route.PassAt >= 0) Along(person, route, request, before ? 0 : route.PassAt + 1, ref best);
            else WithPass(person, route, request, ref best);
        }

        return best;
    }

    private void Along(int person, SupplyRoute route, int request, int from, ref SupplySpot best)
    {
        TimeSegment own = roads.Own(request);
        for (int at = from; at <= route.Count; at++)
        {
            if (route.Fore[at].Ready > own.Latest) return;
            int into = roads.LegTo(person, route, at - 1, request);
            if (!TimeSegment.TryJoin(route.Fore[at], into, own, out TimeSegment head)) continue;
            Compare(person, route, head, request, at, -1, into - roads.Leg(person, route, at - 1, at), ref best);
        }
    }

    private void WithPass(int person, SupplyRoute route, int request, ref SupplySpot best)
    {
        TimeSegment own = roads.Own(request);
        for (int passAt = 0; passAt <= route.Count; passAt++)
        {
            int into = roads.LegTo(person, route, passAt - 1, SupplyPlan.Pass);
            if (!TimeSegment.TryJoin(route.Fore[passAt], into, roads.Own(SupplyPlan.Pass), out TimeSegment head) || head.Ready > own.Latest) return;
            // Right behind the pass, then behind each stop that follows it.
            int toRequest = roads.LegFromPass(request);
            if (TimeSegment.TryJoin(head, toRequest, own, out TimeSegment withRequest))
                Compare(person, route, withRequest, request, passAt, passAt, into + toRequest - roads.Leg(person, route, passAt - 1, passAt), ref best);
            if (passAt == route.Count) return;
            int outOf = roads.LegFrom(person, route, SupplyPlan.Pass, passAt);
            long detour = (long)into + outOf - roads.Leg(person, route, passAt - 1, passAt);
            for (int at = passAt; at < route.Count; at++)
            {
                if (!TimeSegment.TryJoin(head, at == passAt ? outOf : roads.Leg(person, route, at - 1, at), roads.Own(route.Stops[at]), out head) || head.Ready > own.Latest) break;
                toRequest = roads.LegTo(person, route, at, request);
                if (TimeSegment.TryJoin(head, toRequest, own, out withRequest))
                    Compare(person, route, withRequest, request, at + 1, passAt, detour + toRequest - roads.Leg(person, route, at, at + 1), ref best);
            }
        }
    }

    private void Compare(int person, SupplyRoute route, in TimeSegment head, int request, int at, int passAt, long travel, ref SupplySpot best)
    {
        int outOf = roads.LegFrom(person, route, request, at);
        if (!TimeSegment.TryJoin(head, outOf, route.Back[at], out TimeSegment whole)) return;
        long added = SupplyRoads.Cost(whole.Duration, route.Travel + travel + outOf) - route.Cost;
        if (added >= best.Added || chance.Next(Overlooked) == 0) return;
        best = new SupplySpot(person, at, passAt, added);
    }
}
