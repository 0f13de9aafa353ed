using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Roster;

/// <summary>The branch itself, which every page names. No care data, so no role is asked for.</summary>
public sealed class AskBranch(IDbContextFactory<AgencyDb> databases)
{
    /// <summary>The profile; empty while no agency was opened here.</summary>
    public async Task<AgencyProfile?> AskAsync(CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        return await db.Profile.AsNoTracking().SingleOrDefaultAsync(cancel);
    }
}
