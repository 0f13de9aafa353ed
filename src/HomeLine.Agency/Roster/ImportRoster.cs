using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Roster;

/// <summary>Brings a roster in: first what it would change, then, when a person says so, all of it or nothing.</summary>
public sealed class ImportRoster(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>What would change. Needs <see cref="AgencyAction.ImportRoster"/>. Stores nothing.</summary>
    public async Task<Outcome<RosterChange>> PreviewAsync(Actor actor, AgencyRoster incoming, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ImportRoster) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        AgencyRoster? current = await RosterReader.FindAsync(db, cancel);
        if (current is { Profile.IsDemo: true } && !incoming.Profile.IsDemo)
        {
            return new Refusal(
                "demo-agency", "This agency holds invented people only; a real roster must not be mixed in.",
                "Start an empty agency on another machine or database and import there.");
        }
        return RosterChange.Between(current, incoming, await PutDown.ReadAsync(db, cancel));
    }

    /// <summary>Stores a previewed change. Refused when the roster moved meanwhile or rows conflict.</summary>
    /// <returns>Rows written.</returns>
    public async Task<Outcome<int>> ApplyAsync(Actor actor, RosterChange change, CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        return await RosterWriter.ApplyAsync(db, actor, change, clock.RealNow(), cancel);
    }
}
