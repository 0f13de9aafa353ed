namespace HomeLine.Benchmarks.Classic.Supplies;

/// <summary>Where a finished route passes by the depot: nowhere if that will do, otherwise where the day is shortest.</summary>
internal static class SupplyPass
{
    public static int[] Best(SupplyDay day, int person, int[] requests)
    {
        int[] best = [0, .. requests];
        double least = Duration(day, person, best);
        int latest = Latest(day, person, requests);
        for (int at = 1; at <= latest; at++) Compare([.. requests[..at], 0, .. requests[at..]]);
        if (latest == requests.Length) Compare(requests);
        return best;

        void Compare(int[] way)
        {
            double duration = Duration(day, person, way);
            if (duration >= least) return;
            (best, least) = (way, duration);
        }
    }

    /// <summary>How many requests can be made with what the person has at home.</summary>
    private static int Latest(SupplyDay day, int person, int[] requests)
    {
        SupplyNode own = day.Nodes[person];
        var used = new int[own.Parts.Length];
        for (int i = 0; i < requests.Length; i++)
        {
            SupplyNode asked = day.Nodes[requests[i]];
            if (asked.Tools.Except(own.Tools).Any()) return i;
            for (int kind = 0; kind < used.Length; kind++)
                if ((used[kind] += asked.Parts[kind]) > own.Parts[kind])
                    return i;
        }

        return requests.Length;
    }

    // Infinite when a window is missed; whatever is exactly on time counts as missed, so that rounding cannot make it late.
    private static double Duration(SupplyDay day, int person, int[] way)
    {
        PlaneNode home = day.Nodes[person].Plane;
        double time = home.Opens, waited = 0, slack = home.Closes - home.Opens;
        int at = person;
        foreach (int next in way.Append(person))
        {
            PlaneNode plane = day.Nodes[next].Plane;
            double arrive = time + day.Leg(at, next), start = Math.Max(arrive, plane.Opens);
            if (start > plane.Closes - 1e-9) return double.PositiveInfinity;
            waited += start - arrive;
            slack = Math.Min(slack, waited + plane.Closes - start);
            time = start + (next == person ? 0 : plane.Service);
            at = next;
        }

        return time - home.Opens - Math.Min(slack, waited);
    }
}
