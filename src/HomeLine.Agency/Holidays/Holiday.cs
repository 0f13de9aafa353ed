using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Holidays;

/// <summary>A day on which the agency does not work as usual, on its calendar.</summary>
public sealed record Holiday
{
    public required string Id { get; init; }
    public required LocalDate Day { get; init; }

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>Nurses who work it all the same, besides those on call.</summary>
    public ImmutableArray<string> Works { get; init; } = [];

    /// <summary>Nurses who have a day off from it.</summary>
    public ImmutableArray<string> Off { get; init; } = [];
    public required string PutDownBy { get; init; }
    public required Instant PutDownAt { get; init; }

    /// <summary>When, by whom and why it was taken back; empty while it stands.</summary>
    public HolidayEnd? TakenBack { get; init; }

    public bool Stands => TakenBack is null;
}

/// <summary>A holiday that was taken back.</summary>
public sealed record HolidayEnd(Instant At, string By, string Why);
