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
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        Outcome<T> done = await work(db, read.Value);
        if (!done.Succeeded) return done;
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return done;
    }

    /// <summary>
    /// The same for work that takes long to think about: it is prepared on the roster as remembered, before the writers' turn is taken, and what was prepared
    /// is handed over only when nothing was written meanwhile; otherwise the work gets the roster anew and nothing prepared.
    /// </summary>
    public static async Task<Outcome<T>> DoPreparedAsync<TReady, T>(
        IDbContextFactory<AgencyDb> databases, AgencyClock clock, Actor actor, AgencyAction action,
        Func<AgencyDb, AgencyAtHand, Task<TReady>> prepare, Func<AgencyDb, AgencyAtHand, TReady?, Task<Outcome<T>>> work, CancellationToken cancel)
        where TReady : class
    {
        if (actor.Refuse(action) is { } refusal) return refusal;
        (string? end, AgencyAtHand? known, TReady? ready) = (null, null, null);
        await using (AgencyDb before = await databases.CreateDbContextAsync(cancel))
        {
            end = await RememberedRoster.ChainEndAsync(before, cancel);
            Outcome<AgencyAtHand> remembered = await AgencyAtHand.ReadAsync(before, clock, cancel);
            if (!remembered.Succeeded) return remembered.Refusal!;
            known = remembered.Value;
            ready = await prepare(before, known);
        }

        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        bool stands = end is not null && end == await RememberedRoster.ChainEndAsync(db, cancel);
        Outcome<AgencyAtHand> read = stands ? known : await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        Outcome<T> done = await work(db, read.Value, stands ? ready : null);
        if (!done.Succeeded) return done;
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return done;
    }
}
