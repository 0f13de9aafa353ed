using NodaTime;

namespace HomeLine.Agency.Supervision;

/// <summary>A supervision that took place: a registered nurse went along on a visit. Written once.</summary>
public sealed record RideAlong
{
    public required string Id { get; init; }

    /// <summary>The nurse who was looked on.</summary>
    public required string Nurse { get; init; }

    /// <summary>The nurse who went along.</summary>
    public required string Supervisor { get; init; }

    /// <summary>Her name as recorded.</summary>
    public required string SupervisorName { get; init; }

    /// <summary>The day, branch time.</summary>
    public required LocalDate Day { get; init; }

    /// <summary>What was looked at and said; may be empty.</summary>
    public string Note { get; init; } = "";
    /// <summary>The visit on which it was planned; empty when it was not on the plan.</summary>
    public string? Visit { get; init; }

    /// <summary>That visit in words, for example <c>P35 Thu 11 Mar 09:40</c>; empty when it was not on the plan.</summary>
    public string OnVisit { get; init; } = "";

    /// <summary>How many of that nurse and day were recorded before it and taken back.</summary>
    public int Round { get; init; }
    public required string RecordedBy { get; init; }
    public required Instant RecordedAt { get; init; }
}

/// <summary>A ride-along that was recorded wrongly: what was written stays readable, and counts no more. Written once.</summary>
public sealed record RideAlongTakenBack
{
    public required string Ride { get; init; }
    public required string Why { get; init; }
    public required string By { get; init; }
    public required Instant At { get; init; }
}
