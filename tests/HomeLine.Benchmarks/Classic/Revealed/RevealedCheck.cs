namespace HomeLine.Benchmarks.Classic.Revealed;

/// <summary>Judges the routes of a day that was lived through, in double precision: windows, capacity, and that nobody set out for a request that had not arrived.</summary>
internal static class RevealedCheck
{
    // Times are searched in ten-thousandths.
    private const double Tolerance = 2e-4;

    public static Verdict Judge(RevealedDay day, IReadOnlyList<DrivenRoute> routes)
    {
        var faults = new List<string>();
        var seen = new int[day.Nodes.Count];
        double cost = 0;
        foreach (DrivenRoute route in routes) cost += Drive(day, route, seen, faults);
        if (routes.Count > day.Vehicles) faults.Add($"{routes.Count} vehicles, {day.Vehicles} allowed");
        for (int node = 1; node < seen.Length; node++)
            if (seen[node] > 1)
                faults.Add($"request {node} is served {seen[node]} times");
        return new Verdict(cost, faults, $"total distance of the requests served, refused ones apart; {new Unit(day.Distance).Words}; start of service inside the window; nobody sets out before a request has arrived");
    }

    private static double Drive(RevealedDay day, DrivenRoute route, int[] seen, List<string> faults)
    {
        PlaneNode at = day.Nodes[0];
        double free = at.Opens, load = 0, cost = 0;
        foreach ((int node, double left) in route.Stops)
        {
            PlaneNode next = day.Nodes[node];
            double leg = Leg(day, at, next), start = Math.Max(left + leg, next.Opens);
            if (left < free - Tolerance) faults.Add($"request {node}: left for at {left:0.####}, free at {free:0.####}");
            if (left < day.Known[node] - Tolerance) faults.Add($"request {node}: left for at {left:0.####}, known from {day.Known[node]}");
            if (start > next.Closes + Tolerance) faults.Add($"request {node}: begun at {start:0.####}, after {next.Closes}");
            cost += leg;
            load += next.Demand;
            free = start + next.Service;
            seen[node]++;
            at = next;
        }

        double home = Leg(day, at, day.Nodes[0]);
        if (free + home > day.Nodes[0].Closes + Tolerance) faults.Add($"a vehicle is home at {free + home:0.####}");
        if (load > day.Capacity) faults.Add($"a vehicle carries {load}, {day.Capacity} allowed");
        return cost + home;
    }

    private static double Leg(RevealedDay day, PlaneNode from, PlaneNode to)
    {
        double length = Math.Sqrt(Math.Pow(from.X - to.X, 2) + Math.Pow(from.Y - to.Y, 2));
        return day.Distance == Distance.Tenths ? Math.Floor((length * 10) + 1e-7) / 10 : length;
    }
}
