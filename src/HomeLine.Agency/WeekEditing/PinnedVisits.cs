using System.Collections.Immutable;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Visits that people pinned, as the planner has to keep them.</summary>
/// <param name="Visits">As they stand in the draft, or in the published week while there is no draft.</param>
internal sealed record PinnedVisits(ImmutableArray<WeekVisit> Visits)
{
    public static async Task<PinnedVisits> OfAsync(AgencyDb db, LocalDate firstDay, CancellationToken cancel)
    {
        EditLog log = EditLog.Of(await EditStore.OfAsync(db, firstDay, cancel), 0, 0);
        StoredWeek? week = log.Pinned.IsEmpty
            ? null
            : await WeekStore.DraftAsync(db, firstDay, cancel) ?? await WeekStore.PublishedAsync(db, firstDay, cancel);
        return new PinnedVisits(week is null ? [] : [.. week.Week.Visits.Where(v => log.Pinned.Contains(v.Id))]);
    }

    /// <summary>The demand with the pinned visits fixed where they stand; the rest of what was published stays where the search begins.</summary>
    /// <param name="demand">The demand.</param>
    /// <param name="published">What was published; empty when nothing was.</param>
    public WeekDemand In(WeekDemand demand, PlannedWeek? published)
    {
        if (Visits.IsEmpty) return demand;
        var pinned = Visits.Select(v => v.Id).ToHashSet();
        var days = Visits.Select(v => (v.Patient, v.Day)).ToHashSet();
        // Pinned ones first: an occurrence of care is taken once.
        PlannedWeek week = new()
        {
            FirstDay = demand.Calendar.FirstDay,
            Visits = [.. Visits, .. (published?.Visits ?? []).Where(v => !pinned.Contains(v.Id) && !days.Contains((v.Patient, v.Day)))],
        };
        WeekDemand kept = PromisedVisits.In(demand, week);
        return kept with { Problem = kept.Problem with { FrozenVisits = [.. kept.Problem.FrozenVisits, .. pinned] } };
    }
}
