using System.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace HomeLine.Agency.Storage;

/// <summary>
/// One business action is one transaction. Writers take turns on both providers, so that what a use case read at its
/// start is still true when it saves, and the audit chain has one end.
/// </summary>
public static class WorkTransactions
{
    /// <summary>Our own number for the turn writers wait for on PostgreSQL.</summary>
    private const long WritersTurn = 7_264_001;

    /// <summary>Begins a transaction that writes. Nothing is kept unless it is committed.</summary>
    public static async Task<IDbContextTransaction> BeginWorkAsync(this AgencyDb db, CancellationToken cancel)
    {
        // On SQLite this is BEGIN IMMEDIATE: the one writer's lock is taken here, not at the first write.
        IDbContextTransaction work = await db.Database.BeginTransactionAsync(cancel);
        if (db.Database.IsNpgsql())
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({WritersTurn})", cancel);
        return work;
    }

    /// <summary>Begins a transaction that only reads and sees one moment throughout; it waits for no writer.</summary>
    public static Task<IDbContextTransaction> BeginReadingAsync(this AgencyDb db, CancellationToken cancel) =>
        // The SQLite driver begins a deferred, still serializable transaction for this level: no lock before the first write.
        db.Database.BeginTransactionAsync(db.Database.IsSqlite() ? IsolationLevel.ReadUncommitted : IsolationLevel.RepeatableRead, cancel);
}
