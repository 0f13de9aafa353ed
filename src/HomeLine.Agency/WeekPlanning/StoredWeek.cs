using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A week as it stands in the database.</summary>
/// <param name="Week">The week. Its version is the published one: its own, or for a draft the one it was made from.</param>
/// <param name="IsDraft">A proposal nobody outside has seen.</param>
/// <param name="Revision">Grows with every save of this row; give it back when saving a changed draft.</param>
/// <param name="SavedAt">When it was saved.</param>
/// <param name="SavedBy">By whom, as shown.</param>
public sealed record StoredWeek(PlannedWeek Week, bool IsDraft, int Revision, Instant SavedAt, string SavedBy);
