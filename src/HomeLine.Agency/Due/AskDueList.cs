using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Due;

/// <summary>All lines of the agency by urgency, each row with its reason.</summary>
public sealed class AskDueList(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeeDueList"/>.</summary>
    public async Task<Outcome<ImmutableArray<DueRow>>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeDueList) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        StoredWeek? week = await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel);
        return DueRows.Of(agency.Roster, agency.Files, week?.Week, agency.Now);
    }
}
