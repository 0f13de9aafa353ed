using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage;

/// <summary>Everything the agency knows as of one end of the audit chain.</summary>
/// <param name="ChainEnd">Hash of the last audit entry; empty when there is none.</param>
/// <param name="LastEventRow">Row number of the newest ledger entry; 0 for none.</param>
/// <param name="Roster">The roster.</param>
/// <param name="Files">The same by patient.</param>
/// <param name="Decided">Every licensed decision.</param>
internal sealed record RememberedRoster(
    string? ChainEnd, long LastEventRow, AgencyRoster Roster, CareFiles Files, ImmutableArray<DecisionRecord> Decided)
{
    public static Task<string?> ChainEndAsync(AgencyDb db, CancellationToken cancel) =>
        db.AuditEntries.OrderByDescending(entry => entry.Sequence).Select(entry => entry.Hash).FirstOrDefaultAsync(cancel);

    /// <summary>Reads it; of the ledger only what <paramref name="before"/> does not hold yet.</summary>
    public static async Task<RememberedRoster?> ReadAsync(AgencyDb db, RememberedRoster? before, CancellationToken cancel)
    {
        AgencyRoster? roster = await RosterReader.FindAsync(db, before?.Roster.Events ?? [], before?.LastEventRow ?? 0, cancel);
        if (roster is null) return null;
        return new RememberedRoster(
            await ChainEndAsync(db, cancel),
            await db.LineEvents.MaxAsync(entry => (long?)EF.Property<long>(entry, RowKey.Row), cancel) ?? 0,
            roster,
            CareFiles.Of(roster),
            [.. await db.Decisions.AsNoTracking().ToListAsync(cancel)]);
    }
}
