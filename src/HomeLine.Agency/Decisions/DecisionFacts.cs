using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>Everything the list of open questions is worked out from, as of one moment.</summary>
/// <param name="Agency">The roster at the agency's now.</param>
/// <param name="Weeks">The published weeks that are not over.</param>
/// <param name="Stopped">Calls that a symptom screen stopped.</param>
/// <param name="Requests">Orders asked for after safety visits.</param>
public sealed record DecisionFacts(
    AgencyAtHand Agency,
    ImmutableArray<PlannedWeek> Weeks,
    ImmutableArray<FiledReport> Stopped,
    ImmutableArray<OrderRequest> Requests)
{
    /// <summary>Every decision made so far.</summary>
    public ImmutableArray<DecisionRecord> Records => Agency.Decided;

    /// <summary>Visits at which a skin injury or reaction was written down, and that stand.</summary>
    public ImmutableArray<VisitRecord> Harms { get; init; } = [];

    public static async Task<DecisionFacts> ReadAsync(AgencyDb db, AgencyAtHand agency, CancellationToken cancel)
    {
        var weeks = ImmutableArray.CreateBuilder<PlannedWeek>();
        foreach (LocalDate first in await WeekStore.PublishedWeeksAsync(db, cancel))
        {
            if (first < agency.ThisWeek) continue;
            if (await WeekStore.PublishedAsync(db, first, cancel) is { } stored) weeks.Add(stored.Week);
        }

        return new DecisionFacts(
            agency,
            weeks.ToImmutable(),
            [.. await db.Reports.AsNoTracking().Where(r => r.Outcome == ReportOutcome.Stopped).ToListAsync(cancel)],
            [.. await db.OrderRequests.AsNoTracking().ToListAsync(cancel)])
        {
            Harms = [.. await db.VisitRecords.AsNoTracking().Where(r => r.HasSkinHarm && !db.VisitRecords.Any(a => a.Amends == r.Id)).ToListAsync(cancel)],
        };
    }
}
