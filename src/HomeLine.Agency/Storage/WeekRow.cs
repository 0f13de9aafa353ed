using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Storage;

/// <summary>The head of a stored week; its visits are rows beneath it.</summary>
internal sealed class WeekRow
{
    public long Row { get; init; }
    public required LocalDate FirstDay { get; init; }
    public required bool IsDraft { get; init; }

    /// <summary>Grows with every save of this row.</summary>
    public int Version { get; set; }

    /// <summary>The published version the visits belong to: their own, or for a draft the one it was made from.</summary>
    public required int PublishedVersion { get; set; }
    public required ImmutableArray<UnmetNeed> Unmet { get; set; }
    public required Instant SavedAt { get; set; }
    public required string SavedBy { get; set; }
}
