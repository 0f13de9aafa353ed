namespace HomeLine.Planning.Routing.Crews;

/// <summary>Where everybody is and from when on they are free, at one place of the order, and what it has cost until there.</summary>
internal sealed class CrewNote(int caregivers)
{
    public readonly int[] Free = new int[caregivers], Place = new int[caregivers];

    public long Travel { get; set; }
    public long Late { get; set; }
    public int Largest { get; set; }

    public void Clear()
    {
        Array.Clear(Free);
        Array.Clear(Place);
        (Travel, Late, Largest) = (0, 0, 0);
    }

    public void CopyFrom(CrewNote other)
    {
        other.Free.AsSpan().CopyTo(Free);
        other.Place.AsSpan().CopyTo(Place);
        (Travel, Late, Largest) = (other.Travel, other.Late, other.Largest);
    }

    /// <summary>Whether everybody is at the same place at the same time as in the other note; what it cost may differ.</summary>
    public bool IsAsIn(CrewNote other) => Place.AsSpan().SequenceEqual(other.Place) && Free.AsSpan().SequenceEqual(other.Free);
}

/// <summary>What is fixed about one visit.</summary>
internal readonly struct CrewFact(CrewVisit visit)
{
    public readonly int Place = visit.Place, Opens = visit.Opens, Closes = visit.Closes;
    public readonly int FirstDuration = visit.First.Duration, SecondDuration = visit.Second?.Duration ?? 0;
    public readonly int LeastGap = visit.LeastGap, MostGap = visit.MostGap;
}
