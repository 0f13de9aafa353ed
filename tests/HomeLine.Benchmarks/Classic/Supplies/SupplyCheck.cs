namespace HomeLine.Benchmarks.Classic.Supplies;

/// <summary>
/// Judges routes from the file's own numbers in double precision: the sum of the durations (travel, service and waiting) with the best departure. The earliest way home
/// is walked forward, the latest departure that still comes home then is walked back.
/// </summary>
internal static class SupplyCheck
{
    private const double Tolerance = 1e-6;

    public static Verdict Judge(SupplyDay day, IReadOnlyList<(int Person, int[] Nodes)> routes)
    {
        var faults = new List<string>();
        var seen = new int[day.Nodes.Count];
        double cost = 0;
        foreach ((int person, int[] nodes) in routes)
        {
            if (person < 1 || person > day.People || nodes.Any(node => (node != 0 && node <= day.People) || node >= day.Nodes.Count))
            {
                faults.Add($"a route of {person} names nodes that are no requests");
                continue;
            }

            cost += Drive(day, person, nodes, faults);
            Supplies(day, person, nodes, faults);
            foreach (int node in nodes) seen[node]++;
        }

        if (routes.GroupBy(route => route.Person).Any(group => group.Count() > 1)) faults.Add("a person has two routes");
        for (int request = day.People + 1; request < seen.Length; request++)
            if (seen[request] != 1)
                faults.Add($"request {request} is made {seen[request]} times");
        return new Verdict(cost, faults, "sum of durations: travel, service and waiting with the best departure; Euclidean in double precision; start of service inside the window; no tool or part is short after a visit to the depot");
    }

    private static double Drive(SupplyDay day, int person, int[] nodes, List<string> faults)
    {
        int[] way = [person, .. nodes, person];
        double time = day.Nodes[person].Plane.Opens;
        for (int i = 1; i < way.Length; i++)
        {
            PlaneNode plane = day.Nodes[way[i]].Plane;
            time = Math.Max(time + day.Leg(way[i - 1], way[i]), plane.Opens);
            if (time > plane.Closes + Tolerance) faults.Add($"person {person} is at {way[i]} at {time:0.####}, which closes at {plane.Closes}");
            if (i < way.Length - 1) time += plane.Service;
        }

        double home = time;
        for (int i = way.Length - 2; i >= 0; i--)
        {
            PlaneNode plane = day.Nodes[way[i]].Plane;
            time = Math.Min(time - day.Leg(way[i], way[i + 1]) - (i == 0 ? 0 : plane.Service), plane.Closes);
        }

        return home - time;
    }

    private static void Supplies(SupplyDay day, int person, int[] nodes, List<string> faults)
    {
        SupplyNode own = day.Nodes[person];
        int[] left = [.. own.Parts];
        bool supplied = false;
        foreach (int node in nodes)
        {
            supplied |= node == 0;
            SupplyNode asked = day.Nodes[node];
            if (!day.Can(person, node)) faults.Add($"person {person} lacks a skill for {node}");
            if (supplied) continue;
            if (asked.Tools.Any(tool => !own.Tools.Contains(tool))) faults.Add($"person {person} lacks a tool for {node}");
            for (int kind = 0; kind < left.Length; kind++)
                if ((left[kind] -= asked.Parts[kind]) < 0)
                    faults.Add($"person {person} has no part {kind} left for {node}");
        }
    }
}
