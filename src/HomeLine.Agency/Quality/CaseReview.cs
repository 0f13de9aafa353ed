using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Quality;

/// <summary>What a clinical manager found about something that might have been an infection of a line. Written once; a later review of the same entry stands in its place.</summary>
public sealed record CaseReview
{
    public required string Id { get; init; }

    /// <summary>The ledger entry that raised the question.</summary>
    public required string Entry { get; init; }
    public required PatientId Patient { get; init; }
    public LineId? Line { get; init; }

    /// <summary>The day the event counts on.</summary>
    public required LocalDate EventOn { get; init; }

    /// <summary>Whether it counts as an infection of a central line.</summary>
    public required bool Counts { get; init; }

    /// <summary>The surveillance definition it was judged by, as the agency names it.</summary>
    public required string Definition { get; init; }
    public required string Reason { get; init; }
    public required string ReviewedBy { get; init; }
    public required Instant ReviewedAt { get; init; }
}
