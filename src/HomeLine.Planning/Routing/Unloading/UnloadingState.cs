namespace HomeLine.Planning.Routing.Unloading;

/// <summary>Rounds as the search changes them: round <c>day * vehicles + vehicle</c>, and the pattern of each customer, 0 while it is out.</summary>
internal sealed class UnloadingState
{
    public UnloadingState(UnloadingProblem problem)
    {
        int rounds = problem.Days * problem.Vehicles;
        Stops = [.. Enumerable.Range(0, rounds).Select(_ => new int[problem.Customers.Length + 1])];
        Count = new int[rounds];
        Cost = new long[rounds];
        Pattern = new int[problem.Customers.Length];
    }

    public int[][] Stops { get; }
    public int[] Count { get; }

    /// <summary>What each round costs, minutes too long included at their price.</summary>
    public long[] Cost { get; }
    public int[] Pattern { get; }
    public long Total { get; set; }

    public void CopyFrom(UnloadingState other)
    {
        for (int round = 0; round < Count.Length; round++) other.Stops[round].AsSpan(0, other.Count[round]).CopyTo(Stops[round]);
        other.Count.AsSpan().CopyTo(Count);
        other.Cost.AsSpan().CopyTo(Cost);
        other.Pattern.AsSpan().CopyTo(Pattern);
        Total = other.Total;
    }

    public void Insert(int round, int at, int customer)
    {
        Array.Copy(Stops[round], at, Stops[round], at + 1, Count[round] - at);
        Stops[round][at] = customer;
        Count[round]++;
    }

    public bool Remove(int round, int customer)
    {
        int at = Array.IndexOf(Stops[round], customer, 0, Count[round]);
        if (at < 0) return false;
        Array.Copy(Stops[round], at + 1, Stops[round], at, Count[round] - at - 1);
        Count[round]--;
        return true;
    }
}
