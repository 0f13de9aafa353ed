using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Agency.Mending;

/// <summary>The published week with changes worked in. Pure.</summary>
internal static class AppliedWeek
{
    public static PlannedWeek Of(PlannedWeek week, ImmutableArray<VisitChange> changes)
    {
        var byId = changes.Where(c => c.Before is not null).ToDictionary(c => c.Before!.Id, c => c.After, StringComparer.Ordinal);
        IEnumerable<WeekVisit> kept = week.Visits
            .Select(v => byId.TryGetValue(v.Id, out WeekVisit? after) ? after : v)
            .OfType<WeekVisit>();
        IEnumerable<WeekVisit> added = changes.Where(c => c.Before is null).Select(c => c.After).OfType<WeekVisit>();
        return week with { Visits = [.. kept.Concat(added).OrderBy(v => v.Day).ThenBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)] };
    }
}
