using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekEditing;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// What a change of the published week does to the days after it, in sentences: when each item is next due once the changed visits are made, which visits
/// that still stand come before their care is due again, and where nobody is planned yet. Every date is the clocks'; nothing is stored. Pure.
/// </summary>
internal static class AfterThis
{
    /// <summary>Days looked ahead of the change.</summary>
    private const int Days = 7;

    /// <param name="roster">The roster.</param>
    /// <param name="before">The week as published.</param>
    /// <param name="after">The week as it would be.</param>
    /// <param name="patients">Whose days change.</param>
    /// <param name="now">Now.</param>
    public static ImmutableArray<string> Of(AgencyRoster roster, PlannedWeek before, PlannedWeek after, IEnumerable<PatientId> patients, Instant now) =>
        Of(roster, before, after, [.. patients.Distinct()], now);

    private static ImmutableArray<string> Of(AgencyRoster roster, PlannedWeek before, PlannedWeek after, ImmutableArray<PatientId> patients, Instant now) =>
        [.. patients.SelectMany(p => Of(DuesAhead.Alone(roster, p), Alone(before, p), Alone(after, p), now, patients.Length > 1)).Select(line => char.ToUpperInvariant(line[0]) + line[1..])];

    private static IEnumerable<string> Of(AgencyRoster alone, PlannedWeek before, PlannedWeek after, Instant now, bool named)
    {
        if (alone.Patients.IsEmpty) yield break;
        string name = named ? $"{alone.Patients[0].Name}: " : "";
        var was = before.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        ImmutableArray<WeekVisit> changed = [.. after.Visits.Where(v => !was.TryGetValue(v.Id, out WeekVisit? old) || old.Day != v.Day || old.Start != v.Start)];
        LocalDateTime last = changed.IsEmpty ? now.InZone(alone.Profile.Zone).LocalDateTime : changed.Max(v => v.Day.At(v.Start)).PlusMinutes(1);
        Instant at = Instant.Max(now, last.InZoneLeniently(alone.Profile.Zone).ToInstant());
        Dictionary<string, Due> stands = DuesAt(alone, before, now, at), then = DuesAt(alone, after, now, at);
        foreach (IGrouping<(LocalDate From, LocalDate Last, LocalDate? Was), Due> same in then.Values
            .Select(d => (Due: d, Was: stands.TryGetValue(d.Key, out Due? old) ? old.Last : (LocalDate?)null))
            .Where(d => d.Was != d.Due.Last).GroupBy(d => (d.Due.From, d.Due.Last, d.Was), d => d.Due).OrderBy(g => g.Key.Last))
        {
            string what = $"{name}{string.Join("; ", same.Select(d => d.Label))}: next due {Span(same.Key.From, same.Key.Last)}{(same.Key.Was is { } old ? $", not by {Day(old)}" : "")}.";
            yield return what + NobodyYet(same.Key.From, same.Key.Last, same, after, last.Date);
        }

        foreach (string ordered in OrderedAhead.Of(alone, before, after, now)) yield return name + ordered;
        foreach (WeekVisit visit in after.Visits.Where(v => v.Day > last.Date && v.Day <= last.Date.PlusDays(Days) && !changed.Contains(v)))
        {
            ImmutableArray<Due> early = [.. visit.Care.Select(c => then.GetValueOrDefault(c.Key)).OfType<Due>().Where(d => d.From > visit.Day)];
            if (early.IsEmpty) continue;
            yield return early.Length == visit.Care.Length
                ? $"{name}the visit on {Day(visit.Day)} is no longer needed: nothing of it is due again before {Day(early.Min(d => d.From))}."
                : $"{name}on {Day(visit.Day)} leave out what is not due again yet: {string.Join("; ", early.Select(d => d.Label))}.";
        }
    }

    private static string NobodyYet(LocalDate from, LocalDate last, IEnumerable<Due> dues, PlannedWeek after, LocalDate since)
    {
        if (last > since.PlusDays(Days)) return "";
        LocalDate endOfWeek = after.FirstDay.PlusDays(6);
        if (after.Visits.Any(v => v.Day > since && v.Day <= last && v.Care.Any(c => dues.Any(d => d.Key == c.Key)))) return "";
        return last > endOfWeek ? " In the next week’s plan." : from <= endOfWeek ? " No visit is planned for it yet." : "";
    }

    private static Dictionary<string, Due> DuesAt(AgencyRoster alone, PlannedWeek week, Instant now, Instant at)
    {
        AgencyRoster then = Foreseen.At(alone, [week], now, at);
        var calendar = new PlanCalendar(alone.Profile.Zone, week.FirstDay, 3 * Days);
        return WeekDemand.NeedsOf(then.Patients, CareFiles.Of(then), calendar, at).Needs.GroupBy(n => n.Key)
            .ToDictionary(g => g.Key, g => new Due(g.Key, g.First().Task.Label, g.First().Windows[0].OpensOn, g.First().Windows[0].LastDay), StringComparer.Ordinal);
    }

    private static PlannedWeek Alone(PlannedWeek week, PatientId patient) => week with { Visits = [.. week.Visits.Where(v => v.Patient == patient && v.Held is null)] };

    private static string Span(LocalDate from, LocalDate last) => from >= last ? Day(last) : $"{Day(from)} to {Day(last)}";

    private static string Day(LocalDate date) => date.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    private sealed record Due(string Key, string Label, LocalDate From, LocalDate Last);
}
