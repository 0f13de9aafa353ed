using HomeLine.Agency.Access;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The week as people look at it: published, or the draft beside it.</summary>
public sealed class AskWeek
{
    /// <summary>Needs <see cref="AgencyAction.SeeWeek"/>; a draft needs <see cref="AgencyAction.PlanWeek"/>. Refused with <c>no-week</c> when there is none.</summary>
    public Task<Outcome<WeekBoard>> AskAsync(Actor actor, LocalDate firstDay, bool draft, CancellationToken cancel) =>
        throw new NotImplementedException();
}
