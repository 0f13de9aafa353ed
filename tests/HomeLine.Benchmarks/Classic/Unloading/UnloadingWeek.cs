namespace HomeLine.Benchmarks.Classic.Unloading;

/// <summary>
/// Several days with rounds that unload on the way, as the file has it (Taverna and Tilk). Node 0 is the base; times are whole minutes on the road.
/// </summary>
internal sealed record UnloadingWeek(string Name, int Days, int Vehicles, int LongestDuration, int Capacity, IReadOnlyList<UnloadingNode> Nodes, int[][] Minutes)
{
    /// <summary>The allowed sets of days of a frequency: as far apart as the days allow, beginning on any day; bit d for day d.</summary>
    public IReadOnlyList<int> Schemes(int frequency)
    {
        int step = Days / frequency;
        return [.. Enumerable.Range(0, step).Select(first => Enumerable.Range(0, frequency).Sum(visit => 1 << (first + (visit * step))))];
    }
}

/// <summary>A node; the frequency is how many visits it needs, 0 for the base and the places for unloading.</summary>
internal sealed record UnloadingNode(bool Unloads, int Frequency, int Demand, int Service);
