namespace HomeLine.Planning.Bounding;

/// <summary>
/// A nurse-day begun: the visits so far, as far as what comes after depends on them. She leaves the last home at <see cref="Leave"/> at the earliest; leaving later
/// than <see cref="Calm"/> means waiting, because the first visit cannot be moved any later.
/// </summary>
internal struct Label
{
    /// <summary>Reduced cost so far.</summary>
    public double Cost;

    /// <summary>Patients that may not be visited again.</summary>
    public Seen Seen;

    /// <summary>The last visit, -1 at home in the morning.</summary>
    public int Node;

    /// <summary>The label it was made from.</summary>
    public int Parent;

    /// <summary>Earliest departure, plan minutes.</summary>
    public int Leave;

    /// <summary>Latest departure without having waited; never before <see cref="Leave"/>, waiting that must be is counted at once.</summary>
    public int Calm;

    /// <summary>Minutes in homes, charting and driving.</summary>
    public int Busy;

    /// <summary>Driving and waiting so far, minutes.</summary>
    public int Road;

    public short Visits;

    /// <summary>The break has been taken.</summary>
    public bool Rested;

    /// <summary>Another label does everything at least as well.</summary>
    public bool Dead;
}
