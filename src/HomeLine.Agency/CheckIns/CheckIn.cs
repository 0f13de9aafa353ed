using NodaTime;

namespace HomeLine.Agency.CheckIns;

/// <summary>A sign from who is at a home that asks for it: arrived, or out again. Written once.</summary>
public sealed record CheckIn
{
    public required string Visit { get; init; }
    public required LocalDate Day { get; init; }

    /// <summary>Who gave it.</summary>
    public required string Nurse { get; init; }

    /// <summary>Out of the home again; otherwise arrived.</summary>
    public required bool IsOut { get; init; }
    public required Instant At { get; init; }
}
