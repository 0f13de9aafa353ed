using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Today;

/// <summary>What of the agency's map can be closed.</summary>
/// <param name="Crossings">Bridges and passes by name.</param>
/// <param name="Towns">Towns.</param>
public sealed record ClosablePlaces(ImmutableArray<string> Crossings, ImmutableArray<Town> Towns);

/// <summary>Answers which roads and towns there are.</summary>
public sealed class AskClosable(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public async Task<Outcome<ClosablePlaces>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyMap map = read.Value.Roster.Map;
        return new ClosablePlaces([.. map.Barriers.SelectMany(b => b.Crossings).Select(c => c.Name)], map.Towns);
    }
}
