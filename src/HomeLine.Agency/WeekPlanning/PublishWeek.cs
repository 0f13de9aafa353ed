using HomeLine.Agency.Access;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Makes a draft the published week: what nurses and families are told.</summary>
public sealed class PublishWeek
{
    /// <summary>
    /// Needs <see cref="AgencyAction.PublishWeek"/>. A stale version is refused with <c>stale-week</c>. An unmet critical need is
    /// refused with <c>critical-unmet</c> unless <paramref name="acknowledgement"/> holds a reason and a backup plan in words.
    /// </summary>
    public Task<Outcome<PlannedWeek>> PublishAsync(
        Actor actor, LocalDate firstDay, int seenVersion, string? acknowledgement, CancellationToken cancel) =>
        throw new NotImplementedException();
}
