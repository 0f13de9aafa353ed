using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.DayMap;

/// <summary>A day on the agency's own map.</summary>
public sealed class AskDayMap(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.SeeWeek"/>; the draft needs <see cref="AgencyAction.PlanWeek"/>. A day without a week is a map without ways.
    /// </summary>
    public async Task<Outcome<DrawnDay>> AskAsync(Actor actor, LocalDate day, bool draft, CancellationToken cancel)
    {
        if (actor.Refuse(draft ? AgencyAction.PlanWeek : AgencyAction.SeeWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        LocalDate monday = AgencyAtHand.WeekOf(day);
        StoredWeek? week = (draft ? await WeekStore.DraftAsync(db, monday, cancel) : null) ?? await WeekStore.PublishedAsync(db, monday, cancel);
        AgencyAtHand agency = HeldPlaces.With(read.Value);
        return Of(agency.Roster, HeldPlaces.Into(week, agency)?.Week, day, draft && week?.IsDraft == true, read.Value.Closures, (int)agency.Files.Policy.ValueOf("visit.documentation", day));
    }

    /// <summary>Draws a week's day. Pure.</summary>
    public static DrawnDay Of(AgencyRoster roster, PlannedWeek? week, LocalDate day, bool isDraft, ImmutableArray<RoadShut> closures = default, int charting = 0)
    {
        ImmutableArray<WeekVisit> visits = [.. (week?.Visits ?? []).Where(v => v.Day == day).OrderBy(v => v.Start)];
        var patients = roster.Patients.ToDictionary(p => p.Id);
        var visited = visits.Select(v => v.Patient).ToHashSet();
        ImmutableArray<RoadShut> held = [.. (closures.IsDefault ? [] : closures).Where(c => c.From < day.PlusDays(1).AtMidnight() && c.Ends > day.AtMidnight() && c.Ends > c.From)];
        var ways = new DayWays(roster.Map, held, [.. roster.Nurses.Select(n => n.Home).Concat(visited.Select(p => patients[p].Home))], RoadTravel.SlowOn(roster.Map.Roads, day.DayOfWeek), charting);
        return new DrawnDay(
            day,
            isDraft,
            roster.Map,
            [.. roster.Patients.Select(p => new DrawnHome(p.Id.Value, p.Home, visited.Contains(p.Id)))],
            [.. roster.Nurses.Select(n => ways.Of(n, [.. visits.Where(v => v.Nurse == n.Id || v.Second == n.Id)], patients)).Where(w => !w.Stops.IsEmpty)])
        {
            Closures = [.. held.Select(c => new DrawnClosure(c.Crossings, [.. roster.Map.Towns.Where(t => c.Towns.Contains(t.Code))], Words(c, roster.Map)))],
        };
    }

    private static string Words(RoadShut closure, AgencyMap map) =>
        $"{StandingClosures.Words(closure, map)}, from {DayWords.Moment(closure.From)} to {DayWords.Moment(closure.Ends)}{(closure.Why.Length > 0 ? $": {closure.Why}" : "")}";
}
