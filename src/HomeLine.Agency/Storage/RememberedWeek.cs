using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Storage;

/// <summary>A published week as read, with what tells it from every other version.</summary>
internal sealed record RememberedWeek(WeekMark Mark, StoredWeek Week);

/// <summary>Which save of a week a row holds: every save of the row makes another one.</summary>
/// <param name="Row">The row.</param>
/// <param name="Version">Grows with every save of the row.</param>
/// <param name="SavedAt">When it was saved.</param>
/// <param name="SavedBy">By whom.</param>
internal sealed record WeekMark(long Row, int Version, Instant SavedAt, string SavedBy);
