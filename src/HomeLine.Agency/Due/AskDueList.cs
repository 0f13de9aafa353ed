using System.Collections.Immutable;
using HomeLine.Agency.Access;

namespace HomeLine.Agency.Due;

/// <summary>All lines of the agency by urgency, each row with its reason.</summary>
public sealed class AskDueList
{
    /// <summary>Needs <see cref="AgencyAction.SeeDueList"/>.</summary>
    public Task<Outcome<ImmutableArray<DueRow>>> AskAsync(Actor actor, CancellationToken cancel) =>
        throw new NotImplementedException();
}
