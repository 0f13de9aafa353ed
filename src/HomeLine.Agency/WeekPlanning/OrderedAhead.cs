using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// What a change does to care that is tied to the dates of an order, such as a draw, a dose or the recertification: made on another day, in time or not, or by
/// nobody any more. Its clock does not start anew from the change, so that the clocks alone would not say it. Pure.
/// </summary>
internal static class OrderedAhead
{
    /// <param name="alone">The roster with one patient.</param>
    /// <param name="before">Her visits as published.</param>
    /// <param name="after">Her visits as they would be.</param>
    /// <param name="now">Now.</param>
    public static ImmutableArray<string> Of(AgencyRoster alone, PlannedWeek before, PlannedWeek after, Instant now)
    {
        var calendar = new PlanCalendar(alone.Profile.Zone, before.FirstDay, 7);
        CareNeed[] ordered = [.. WeekDemand.NeedsOf(alone.Patients, CareFiles.Of(alone), calendar, now).Needs.Where(IsOrdered).OrderBy(n => n.Task.LateFrom)];
        if (ordered.Length == 0) return [];
        Dictionary<string, WeekVisit> was = MadeAt(ordered, before, calendar, now), then = MadeAt(ordered, after, calendar, now);
        return [.. ordered.Select(n => Words(n, was.GetValueOrDefault(n.Task.Id), then.GetValueOrDefault(n.Task.Id), calendar)).OfType<string>().Distinct()];
    }

    private static bool IsOrdered(CareNeed need) => need.Item is CareItem.Labs or CareItem.Recertification or CareItem.OrderedService;

    /// <summary>The visit that makes each occurrence, by the occurrence: each is made once, by the visit nearest to it.</summary>
    private static Dictionary<string, WeekVisit> MadeAt(CareNeed[] needs, PlannedWeek week, PlanCalendar calendar, Instant now)
    {
        var open = needs.GroupBy(n => n.Key).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        var made = new Dictionary<string, WeekVisit>(StringComparer.Ordinal);
        foreach (WeekVisit visit in week.Visits.OrderBy(v => v.Day).ThenBy(v => v.Start))
        {
            int start = calendar.Minute(visit.Day, visit.Start);
            if (start < calendar.Minute(now)) continue;
            foreach (VisitCare care in visit.Care)
            {
                if (!open.TryGetValue(care.Key, out List<CareNeed>? left) || PromisedVisits.Nearest(left, n => n.Task, start) is not { } need) continue;
                left.Remove(need);
                made[need.Task.Id] = visit;
            }
        }

        return made;
    }

    private static string? Words(CareNeed need, WeekVisit? was, WeekVisit? then, PlanCalendar calendar)
    {
        if (was is null && then is null) return null;
        string what = $"{need.Task.Label}, by order {Span(need.Task, calendar)}";
        if (then is null) return $"{what}: nobody makes it any more, it was planned for {Day(was!.Day)}.";
        string fault = Fault(need.Task, then, calendar);
        if (was is not null && was.Day == then.Day && (fault.Length == 0 || Fault(need.Task, was, calendar) == fault)) return null;
        return $"{what}: made on {Day(then.Day)}{(was is null ? "" : was.Day == then.Day ? $" at {Time(then)}" : $", not on {Day(was.Day)}")}{(fault.Length > 0 ? fault : ", still in time")}.";
    }

    private static string Fault(CareTask task, WeekVisit visit, PlanCalendar calendar)
    {
        int start = calendar.Minute(visit.Day, visit.Start);
        if (start >= task.LateFrom) return ", later than ordered";
        if (start < task.Opens) return ", earlier than ordered";
        return task.StartSpans.IsDefaultOrEmpty || task.StartSpans.Any(s => start >= s.From && start <= s.To) ? "" : ", outside the times the order ties it to";
    }

    private static string Span(CareTask task, PlanCalendar calendar)
    {
        LocalDate from = calendar.Local(task.Opens).Date;
        if (task.LateFrom == int.MaxValue) return $"from {Day(from)}";
        LocalDate last = calendar.Local(task.LateFrom - 1).Date;
        return from >= last ? Day(last) : $"{Day(from)} to {Day(last)}";
    }

    private static string Day(LocalDate date) => date.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    private static string Time(WeekVisit visit) => visit.Start.ToString("HH:mm", CultureInfo.InvariantCulture);
}
