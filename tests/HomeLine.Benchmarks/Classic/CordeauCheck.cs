namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// Judges routes of the periodic or multi-depot problem from the file's own numbers, in double precision. The shortest duration comes from the
/// forward time slack (Savelsbergh 1992): the departure can be put off by the slack or the waiting, whichever is less.
/// </summary>
internal static class CordeauCheck
{
    private const double Tolerance = 1e-6;

    public static Verdict Judge(CordeauInstance instance, IReadOnlyList<(int Group, int[] Stops)> routes)
    {
        var faults = new List<string>();
        var days = new int[instance.Customers.Count];
        double cost = 0;
        foreach ((int group, int[] stops) in routes)
        {
            cost += Drive(instance, group, stops, faults);
            foreach (int stop in stops)
            {
                if ((days[stop] >> group & 1) != 0) faults.Add($"customer {instance.Customers[stop].Number} is visited twice in group {group + 1}");
                days[stop] |= 1 << group;
            }
        }

        for (int group = 0; group < instance.Groups; group++)
            if (routes.Count(route => route.Group == group) > instance.Vehicles)
                faults.Add($"group {group + 1} has more routes than the {instance.Vehicles} vehicles");
        for (int c = 0; c < days.Length; c++)
            if (!instance.Customers[c].Patterns.Contains(days[c]))
                faults.Add($"customer {instance.Customers[c].Number}: its days or depots are none of its patterns");
        return new Verdict(cost, faults, $"total distance; {new Unit(instance.Distance).Words}; start of service inside the window; duration from the best departure");
    }

    private static double Drive(CordeauInstance instance, int group, int[] stops, List<string> faults)
    {
        PlaneNode home = instance.Depots[group], at = home;
        double clock = home.Opens, waiting = 0, slack = double.PositiveInfinity, cost = 0, load = 0;
        foreach (PlaneNode next in stops.Select(stop => instance.Customers[stop].Plane).Append(home))
        {
            double leg = Leg(instance, at, next);
            cost += leg;
            double arrive = clock + leg, start = Math.Max(arrive, next.Opens);
            waiting += start - arrive;
            if (start > next.Closes + Tolerance) faults.Add($"group {group + 1}: {start:0.####} at a place that closes at {next.Closes}");
            slack = Math.Min(slack, waiting + next.Closes - start);
            clock = start + next.Service;
            load += next.Demand;
            at = next;
        }

        (double longest, double capacity) = instance.Limits[group];
        double duration = clock - home.Opens - Math.Min(slack, waiting);
        if (longest > 0 && duration > longest + Tolerance) faults.Add($"group {group + 1}: a route takes {duration:0.####}, at most {longest} allowed");
        if (capacity > 0 && load > capacity) faults.Add($"group {group + 1}: load {load} above {capacity}");
        return cost;
    }

    private static double Leg(CordeauInstance instance, PlaneNode from, PlaneNode to)
    {
        double length = Math.Sqrt(Math.Pow(from.X - to.X, 2) + Math.Pow(from.Y - to.Y, 2));
        return instance.Distance == Distance.Tenths ? Math.Floor((length * 10) + 1e-7) / 10 : length;
    }
}
