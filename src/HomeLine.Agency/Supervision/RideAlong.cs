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
    public required string RecordedBy { get; init; }
    public required Instant RecordedAt { get; init; }
}
