namespace HomeLine.Benchmarks.Classic.Unloading;

/// <summary>Judges rounds, written as the nodes they pass, from the file's own numbers.</summary>
internal static class UnloadingCheck
{
    public static Verdict Judge(UnloadingWeek week, IReadOnlyList<(int Day, int[] Nodes)> rounds)
    {
        var faults = new List<string>();
        var days = new int[week.Nodes.Count];
        long cost = 0;
        foreach ((int day, int[] nodes) in rounds) cost += Drive(week, day, nodes, days, faults);
        foreach (IGrouping<int, (int Day, int[] Nodes)> day in rounds.GroupBy(round => round.Day))
            if (day.Count() > week.Vehicles)
                faults.Add($"day {day.Key} has {day.Count()} rounds, {week.Vehicles} vehicles");
        for (int node = 0; node < days.Length; node++)
            if (week.Nodes[node].Frequency > 0 && !week.Schemes(week.Nodes[node].Frequency).Contains(days[node]))
                faults.Add($"node {node}: its days are none of the schemes for {week.Nodes[node].Frequency} visits");
        return new Verdict(cost, faults, "sum of minutes driven over all days; the file's whole-minute matrix, which is not symmetric; travel and service within the longest duration; unloaded before coming home");
    }

    private static long Drive(UnloadingWeek week, int day, int[] nodes, int[] days, List<string> faults)
    {
        if (day < 0 || day >= week.Days || nodes.Length < 2 || nodes[0] != 0 || nodes[^1] != 0 || nodes.Any(node => node < 0 || node >= week.Nodes.Count))
        {
            faults.Add($"a round of day {day} does not go from the base to the base over known nodes");
            return 0;
        }

        long travel = 0, service = 0, load = 0;
        for (int i = 1; i < nodes.Length; i++)
        {
            UnloadingNode node = week.Nodes[nodes[i]];
            travel += week.Minutes[nodes[i - 1]][nodes[i]];
            service += node.Service;
            load = node.Unloads ? 0 : load + node.Demand;
            if (load > week.Capacity) faults.Add($"day {day}: load {load} at node {nodes[i]}, {week.Capacity} allowed");
            if (node.Frequency == 0) continue;
            if ((days[nodes[i]] >> day & 1) != 0) faults.Add($"node {nodes[i]} is visited twice on day {day}");
            days[nodes[i]] |= 1 << day;
        }

        if (load > 0) faults.Add($"day {day}: a round comes home with {load} not unloaded");
        if (travel + service > week.LongestDuration) faults.Add($"day {day}: a round takes {travel + service}, {week.LongestDuration} allowed");
        return travel;
    }
}
