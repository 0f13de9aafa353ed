using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Due;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
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
        return Of(read.Value.Roster, week?.Week, day, draft && week?.IsDraft == true);
    }

    /// <summary>Draws a week's day. Pure.</summary>
    public static DrawnDay Of(AgencyRoster roster, PlannedWeek? week, LocalDate day, bool isDraft)
    {
        ImmutableArray<WeekVisit> visits = [.. (week?.Visits ?? []).Where(v => v.Day == day).OrderBy(v => v.Start)];
        var patients = roster.Patients.ToDictionary(p => p.Id);
        var visited = visits.Select(v => v.Patient).ToHashSet();
        var roads = new RoadPieces(roster.Map, roster.Nurses.Select(n => n.Home).Concat(visited.Select(p => patients[p].Home)));
        return new DrawnDay(
            day,
            isDraft,
            roster.Map,
            [.. roster.Patients.Select(p => new DrawnHome(p.Id.Value, p.Home, visited.Contains(p.Id)))],
            [.. roster.Nurses.Select(n => WayOf(n, [.. visits.Where(v => v.Nurse == n.Id || v.Second == n.Id)], patients, roster.Map, roads)).Where(w => !w.Stops.IsEmpty)]);
    }

    private static NurseWay WayOf(
        NurseFile nurse, ImmutableArray<WeekVisit> visits, Dictionary<PatientId, Patient> patients, AgencyMap map, RoadPieces roads)
    {
        var stops = ImmutableArray.CreateBuilder<WayStop>();
        var line = ImmutableArray.CreateBuilder<MapPoint>();
        line.Add(nurse.Home);
        MapPoint here = nurse.Home;
        foreach (WeekVisit visit in visits)
        {
            Patient patient = patients[visit.Patient];
            (ImmutableArray<MapPoint> points, ImmutableArray<string> over) = roads.Way(here, patient.Home);
            line.AddRange(points);
            stops.Add(new WayStop(
                stops.Count + 1, patient.Id.Value, DueRows.PlaceOf(patient, map), visit.Start, visit.Minutes, patient.Home, roads.Minutes(here, patient.Home), over));
            here = patient.Home;
        }

        int back = visits.IsEmpty ? 0 : roads.Minutes(here, nurse.Home);
        if (!visits.IsEmpty) line.AddRange(roads.Way(here, nurse.Home).Points);
        return new NurseWay(nurse.Id, nurse.Name, nurse.Home, stops.ToImmutable(), line.ToImmutable(), stops.Sum(s => s.TravelBefore) + back, back);
    }
}
