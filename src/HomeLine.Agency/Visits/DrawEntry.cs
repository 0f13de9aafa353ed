using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>Blood drawn under an order, as written down.</summary>
public sealed record DrawEntry
{
    public required string Order { get; init; }

    /// <summary>Through which line; empty when a vein was punctured.</summary>
    public LineId? Line { get; init; }
    public string? Lumen { get; init; }
    public LocalTime? DrawnAt { get; init; }

    /// <summary>When the last dose before it was given, for a level.</summary>
    public LocalDateTime? LastDose { get; init; }
    public string Tubes { get; init; } = "";

    /// <summary>Where it was handed in.</summary>
    public string Dropped { get; init; } = "";
    public LocalTime? DroppedAt { get; init; }
}
