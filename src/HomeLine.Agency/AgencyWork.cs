using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency;

/// <summary>One business action in one transaction: the right first, then the roster as it stands, then all of it or nothing.</summary>
internal static class AgencyWork
{
    public static async Task<Outcome<T>> DoAsync<T>(
        IDbContextFactory<AgencyDb> databases, AgencyClock clock, Actor actor, AgencyAction action,
        Func<AgencyDb, AgencyAtHand, Task<Outcome<T>>> work, CancellationToken cancel)
    {
        if (actor.Refuse(action) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        Outcome<T> done = await work(db, read.Value);
        if (!done.Succeeded) return done;
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return done;
    }
}
