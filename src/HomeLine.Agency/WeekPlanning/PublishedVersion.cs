using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>One version of a week as it was published; kept for good.</summary>
/// <param name="FirstDay">First day of the week.</param>
/// <param name="Version">1 for the first, without gaps.</param>
/// <param name="PublishedAt">When.</param>
/// <param name="PublishedBy">By whom, as shown.</param>
/// <param name="Reason">Why this version was made, or what was acknowledged.</param>
/// <param name="Week">The whole week.</param>
public sealed record PublishedVersion(
    LocalDate FirstDay,
    int Version,
    Instant PublishedAt,
    string PublishedBy,
    string Reason,
    PlannedWeek Week);
