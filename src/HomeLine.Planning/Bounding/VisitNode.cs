namespace HomeLine.Planning.Bounding;

/// <summary>One way to visit a patient on a nurse-day: which care, within which starts. All starts of a node cost the same points.</summary>
internal sealed class VisitNode
{
    public required int Patient { get; init; }

    /// <summary>The second person of a two-person visit; she adds work and nothing else.</summary>
    public required bool IsSecond { get; init; }

    public required CareUnit[] Units { get; init; }

    /// <summary>A visit that must stay.</summary>
    public bool Stays => Units[0].Fixed is not null;

    /// <summary>Minutes in the home and charting.</summary>
    public required int Stay { get; init; }

    /// <summary>First start, plan minutes.</summary>
    public required int From { get; init; }

    /// <summary>Last start, plan minutes, included.</summary>
    public required int To { get; init; }

    /// <summary>By unit: points of the first three tiers.</summary>
    public required long[][] UnitPoints { get; init; }

    /// <summary>By <see cref="Tier"/>: what the visit itself adds; work is the visit's price, people its continuity and wishes.</summary>
    public required long[] Adds { get; init; }

    /// <summary>Rows of the master problem it counts in, and how.</summary>
    public List<(int Row, int Times)> Rows { get; } = [];

    /// <summary>Identifies the care without the time of day: nodes with the same key differ in their starts alone.</summary>
    public required int Bundle { get; init; }
}
