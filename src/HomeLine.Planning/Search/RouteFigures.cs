namespace HomeLine.Planning.Search;

/// <summary>Minutes of one nurse-day as last timed.</summary>
internal struct RouteFigures
{
    /// <summary>Driving, first and last leg and stops at drop points included.</summary>
    public int Driving;

    /// <summary>Driving if every trip took its fewest minutes of any hour.</summary>
    public int LeastDriving;

    /// <summary>Paid waiting between visits that starting the day later cannot save.</summary>
    public int Wait;

    /// <summary>Minutes past the end of the shift.</summary>
    public int Overtime;

    /// <summary>Minutes in homes.</summary>
    public int Stay;

    /// <summary>Fewest minutes of the way home.</summary>
    public int LastLeg;

    /// <summary>Blended cost of lateness of the day's own care.</summary>
    public double Late;

    /// <summary>Blended cost of the day, price of the visits left aside.</summary>
    public double Cost;

    /// <summary>Specimens are drawn, and the drive to a drop point is part of the day.</summary>
    public bool Draws;

    /// <summary>No break, no drop point, roads the same at all hours, and every start follows from one span: what <see cref="PositionReach"/> says is exact.</summary>
    public bool Plain;
}

/// <summary>What a later arrival at a position of a nurse-day would do to everything from there on (constant-time concatenation).</summary>
internal struct PositionReach
{
    /// <summary>Where it is, as <see cref="Roads"/> counts places.</summary>
    public int Place;

    /// <summary>Fewest minutes of the way here.</summary>
    public int Leg;

    /// <summary>Latest arrival with which all that follows is still possible.</summary>
    public int Latest;

    /// <summary>Latest arrival that makes nothing later than it is in points of lateness.</summary>
    public int Calm;

    /// <summary>Minutes from arrival here to being home, without waiting.</summary>
    public int Rest;

    /// <summary>Earliest return, however early she arrives here.</summary>
    public int Home;

    /// <summary>Earliest departure from here with no break taken before.</summary>
    public int Leave;

    /// <summary>Latest departure from here without having waited, the first visit as late as it may be.</summary>
    public int LeaveCalm;

    /// <summary>Latest return without waiting here or later.</summary>
    public int HomeCalm;
}
