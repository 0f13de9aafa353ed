using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>
/// Later visits of which an urgent bundle does a part: the same care is never done twice, so they keep only what is left and get shorter.
/// </summary>
/// <param name="Week">The week with the shortened visits.</param>
/// <param name="Visits">Each of them before and after.</param>
public sealed record ShortenedVisits(PlannedWeek Week, ImmutableArray<(WeekVisit Before, WeekVisit After)> Visits)
{
    public static ShortenedVisits By(
        UrgentBundle bundle, PlannedWeek week, AgencyRoster roster, CareFiles files, PlanCalendar calendar, Instant now)
    {
        var done = bundle.Needs.Select(n => n.Key).ToHashSet();
        int minute = calendar.Minute(now);
        ImmutableArray<WeekVisit> touched = [.. week.Visits.Where(v =>
            v.Patient == bundle.Lead.Patient
            && calendar.Minute(v.Day, v.Start) > minute
            && v.Care.Any(c => done.Contains(c.Key))
            && v.Care.Any(c => !done.Contains(c.Key)))];
        if (touched.IsEmpty) return new ShortenedVisits(week, []);
        var needs = WeekDemand.Of(roster, files, week.FirstDay, calendar.DayCount, now).Needs.Values.ToLookup(n => n.Key);
        ImmutableArray<(WeekVisit Before, WeekVisit After)> pairs = [.. touched.Select(v => (v, Shorten(v, done, needs)))];
        var after = pairs.ToDictionary(p => p.Before.Id, p => p.After);
        return new ShortenedVisits(week with { Visits = [.. week.Visits.Select(v => after.GetValueOrDefault(v.Id, v))] }, pairs);
    }

    private static WeekVisit Shorten(WeekVisit visit, HashSet<string> done, ILookup<string, CareNeed> needs)
    {
        ImmutableArray<VisitCare> left = [.. visit.Care.Where(c => !done.Contains(c.Key))];
        var tasks = left.Select(c => needs[c.Key].FirstOrDefault()?.Task).OfType<HomeLine.Planning.Problem.CareTask>().ToList();
        int minutes = tasks.Count == 0 ? visit.Minutes : tasks.Max(t => t.SetupMinutes) + tasks.Sum(t => t.WorkMinutes);
        return visit with { Care = left, Minutes = Math.Min(minutes, visit.Minutes) };
    }
}
