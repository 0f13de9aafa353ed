using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Roster;

/// <summary>Opens the agency in an empty database: with a whole roster, or with its name and map alone.</summary>
public sealed class OpenAgency(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Whether an agency was opened here.</summary>
    public async Task<bool> IsOpenAsync(CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        return await RosterReader.HoldsRosterAsync(db, cancel);
    }

    /// <summary>
    /// Stores the roster and, if given, its published week as version 1, all or nothing. Needs <see cref="AgencyAction.ImportRoster"/>.
    /// Refused with <c>agency-open</c> when there is a roster already.
    /// </summary>
    public async Task<Outcome<AgencyRoster>> OpenAsync(Actor actor, AgencyRoster roster, PlannedWeek? published, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ImportRoster) is { } refusal) return refusal;
        RosterChange change = RosterChange.Between(null, roster);
        if (change.Conflicts is [var first, ..])
            return new Refusal("roster-conflict", $"{first.Kind} {first.Key}: {first.Refusal.Sentence}", first.Refusal.Action);
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var work = await db.BeginWorkAsync(cancel);
        if (await RosterReader.HoldsRosterAsync(db, cancel))
            return new Refusal("agency-open", "This database holds an agency already.", "Import into it, or start with an empty database.");
        await RosterWriter.WriteAsync(db, change, cancel);
        await AuditTrail.AppendAsync(db, actor, "open-agency", roster.Profile.Branch, $"{change.Writes} rows", clock.RealNow(), cancel);
        if (published is not null)
        {
            Outcome<PlannedWeek> week = await WeekStore.PublishAsync(
                db, actor, published with { Version = 0 }, "as the agency was opened", clock.Now(roster.Profile), cancel);
            if (week.Refusal is { } why) return why;
        }
        await work.CommitAsync(cancel);
        return roster;
    }

    /// <summary>Opens an agency without patients, nurses or weeks. Needs <see cref="AgencyAction.ImportRoster"/>.</summary>
    public Task<Outcome<AgencyRoster>> OpenEmptyAsync(Actor actor, AgencyProfile profile, AgencyMap map, CancellationToken cancel) =>
        OpenAsync(actor, new AgencyRoster { Profile = profile, Map = map }, null, cancel);
}
