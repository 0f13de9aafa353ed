namespace HomeLine.Planning.Routing.Supplies;

/// <summary>One person's route as the search changes it; the stops are requests, or <see cref="SupplyPlan.Pass"/>.</summary>
internal sealed class SupplyRoute(int most, int kinds)
{
    public int[] Stops { get; } = new int[most + 1];
    public int Count { get; set; }

    /// <summary>Index of the pass among the stops, or -1.</summary>
    public int PassAt { get; set; } = -1;

    /// <summary>Parts used before the pass, by kind.</summary>
    public int[] Used { get; } = new int[kinds];

    /// <summary>Time from home up to and without stop <c>i</c>, and from stop <c>i</c> until home.</summary>
    public TimeSegment[] Fore { get; } = new TimeSegment[most + 2];
    public TimeSegment[] Back { get; } = new TimeSegment[most + 2];

    public long Travel { get; set; }
    public int Duration { get; set; }
    public long Cost { get; set; }

    /// <summary>The move that last touched it.</summary>
    public int Stamp { get; set; }

    public void CopyFrom(SupplyRoute other)
    {
        other.Stops.AsSpan(0, other.Count).CopyTo(Stops);
        other.Fore.AsSpan(0, other.Count + 1).CopyTo(Fore);
        other.Back.AsSpan(0, other.Count + 1).CopyTo(Back);
        other.Used.CopyTo(Used, 0);
        (Count, PassAt, Travel, Duration, Cost) = (other.Count, other.PassAt, other.Travel, other.Duration, other.Cost);
    }

    public void InsertAt(int at, int stop)
    {
        Array.Copy(Stops, at, Stops, at + 1, Count - at);
        Stops[at] = stop;
        Count++;
        if (stop == SupplyPlan.Pass) PassAt = at;
        else if (PassAt >= at) PassAt++;
    }

    public void RemoveAt(int at)
    {
        if (at == PassAt) PassAt = -1;
        else if (PassAt > at) PassAt--;
        Array.Copy(Stops, at + 1, Stops, at, Count - at - 1);
        Count--;
    }
}
