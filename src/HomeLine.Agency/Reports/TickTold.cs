using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Reports;

/// <summary>The list of people a report says must be told: who is left, and the tick with name and time when somebody was.</summary>
public sealed class TickTold(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>The list of a report, or of a decision, in its order. Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public async Task<Outcome<ImmutableArray<ToTell>>> ListAsync(Actor actor, string reportId, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        return await OfReportAsync(db, reportId, cancel);
    }

    /// <summary>Marks somebody as told, or takes the mark back. Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public async Task<Outcome<ImmutableArray<ToTell>>> TickAsync(Actor actor, string reportId, string entryId, bool isTold, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        ToTell? entry = await db.ToTell.SingleOrDefaultAsync(t => t.Id == entryId && (t.Report == reportId || (t.Report == null && t.Id.StartsWith(reportId + "-"))), cancel);
        if (entry is null) return new Refusal("no-such-person", "This person is not on the report's list.", "Open the report again.");
        db.Entry(entry).Property(t => t.DoneAt).CurrentValue = isTold ? clock.RealNow() : null;
        db.Entry(entry).Property(t => t.DoneBy).CurrentValue = isTold ? actor.Name : "";
        await AuditTrail.AppendAsync(db, actor, isTold ? "told" : "not-told", entry.Report is null ? $"decision {reportId}" : $"report {reportId}", entry.Id, clock.RealNow(), cancel);
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return await OfReportAsync(db, reportId, cancel);
    }

    private static async Task<ImmutableArray<ToTell>> OfReportAsync(AgencyDb db, string reportId, CancellationToken cancel)
    {
        List<ToTell> entries = await db.ToTell.AsNoTracking().Where(t => t.Report == reportId || (t.Report == null && t.Id.StartsWith(reportId + "-"))).ToListAsync(cancel);
        return [.. entries.OrderBy(t => t.Id.Length).ThenBy(t => t.Id, StringComparer.Ordinal)];
    }
}
