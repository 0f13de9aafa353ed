namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// Judges routes of a one-day instance from the file's own numbers. Shares nothing with the search but the file's numbers. In tenths it computes with
/// whole tenths, otherwise in double precision with a tolerance of a hundred-millionth.
/// </summary>
internal static class VrptwCheck
{
    private const double Tolerance = 1e-8;

    public static Verdict Judge(VrptwInstance instance, IReadOnlyList<int[]> routes)
    {
        var faults = new List<string>();
        var seen = new int[instance.Nodes.Count];
        double cost = 0;
        for (int r = 0; r < routes.Count; r++) cost += Drive(instance, r, routes[r], seen, faults);
        for (int customer = 1; customer < seen.Length; customer++)
            if (seen[customer] != 1)
                faults.Add($"customer {customer} is visited {seen[customer]} times");
        if (routes.Count > instance.Vehicles) faults.Add($"{routes.Count} routes, but only {instance.Vehicles} vehicles");
        double perOne = instance.Distance == Distance.Tenths ? 10 : 1;
        return new Verdict(cost / perOne, faults, $"total distance; {new Unit(instance.Distance).Words}; start of service inside the window; waiting is free");
    }

    private static double Drive(VrptwInstance instance, int index, int[] route, int[] seen, List<string> faults)
    {
        bool tenths = instance.Distance == Distance.Tenths;
        double perOne = tenths ? 10 : 1, clock = instance.Nodes[0].Opens * perOne, load = 0, cost = 0;
        int at = 0;
        foreach (int next in route.Append(0))
        {
            PlaneNode from = instance.Nodes[at], to = instance.Nodes[next];
            double dx = from.X - to.X, dy = from.Y - to.Y, leg = Math.Sqrt((dx * dx) + (dy * dy));
            if (tenths) leg = Math.Truncate((leg * 10) + 1e-7);
            cost += leg;
            double start = Math.Max(clock + leg, to.Opens * perOne);
            if (start > (to.Closes * perOne) + Tolerance) faults.Add($"route {index + 1}: {start / perOne:0.####} at {next}, which closes at {to.Closes}");
            clock = start + (to.Service * perOne);
            load += to.Demand;
            if (next != 0) seen[next]++;
            at = next;
        }

        if (load > instance.Capacity) faults.Add($"route {index + 1}: load {load} above {instance.Capacity}");
        return cost;
    }
}
