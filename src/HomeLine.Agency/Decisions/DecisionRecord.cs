using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>A decision as it is kept: never changed, never deleted. A question that comes back is decided anew, one <see cref="Round"/> later.</summary>
public sealed record DecisionRecord
{
    public required string Id { get; init; }

    /// <summary>Which question; see <see cref="OpenDecision.Key"/>.</summary>
    public required string Key { get; init; }

    /// <summary>How often this question had been decided before.</summary>
    public required int Round { get; init; }
    public required string Code { get; init; }
    public required PatientId Patient { get; init; }
    public LineId? Line { get; init; }

    /// <summary>The question as it was shown.</summary>
    public required string Question { get; init; }
    public required DecisionChoice Choice { get; init; }
    public required string Reason { get; init; }

    /// <summary>The licensed person whose decision it is, by name and licence, as given.</summary>
    public required string LicensedName { get; init; }

    /// <summary>The account that entered it.</summary>
    public required string EnteredBy { get; init; }
    public required Instant DecidedAt { get; init; }

    /// <summary>Last day it holds, included; empty when it has no end.</summary>
    public LocalDate? Until { get; init; }
}
