using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Storage.Mapping;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Supervision;

/// <summary>Supervision as it stands.</summary>
/// <param name="Due">Nurses under supervision, the earliest due first.</param>
/// <param name="Supervisors">Who may go along.</param>
/// <param name="Made">The last ride-alongs that count, newest first.</param>
/// <param name="TakenBack">The last ones that were recorded wrongly and count no more, newest first.</param>
/// <param name="Today">Today at the branch.</param>
public sealed record RideAlongList(ImmutableArray<RideAlongDue> Due, ImmutableArray<NurseFile> Supervisors, ImmutableArray<RideAlong> Made, ImmutableArray<(RideAlong Ride, RideAlongTakenBack Back)> TakenBack, LocalDate Today);

/// <summary>Who has to be supervised by when, and where that is planned.</summary>
public sealed class AskRideAlongs(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>How many of the last ones are listed: our own default.</summary>
    private const int Listed = 20;

    /// <summary>Needs <see cref="AgencyAction.SeeRideAlongs"/>.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="draft">A week as worked on, which stands for the published one; empty for none.</param>
    /// <param name="cancel">Stops.</param>
    public async Task<Outcome<RideAlongList>> AskAsync(Actor actor, PlannedWeek? draft, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeRideAlongs) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        RideAlong[] all = await db.RideAlongs.AsNoTracking().ToArrayAsync(cancel);
        Dictionary<string, RideAlongTakenBack> back = await db.RideAlongsTakenBack.AsNoTracking().ToDictionaryAsync(b => b.Ride, cancel);
        RideAlong[] made = [.. all.Where(r => !back.ContainsKey(r.Id))];
        // Where two people are asked for anyway, nobody has come to look on.
        var alone = agency.Roster.Patients.Where(p => p.CrewSize == 1).Select(p => p.Id).ToHashSet();
        WeekVisit[] ahead = [.. (await AheadAsync(db, agency.ThisWeek, draft, cancel)).Where(v => alone.Contains(v.Patient))];
        string[] under = [.. agency.Roster.Nurses.Where(Supervised.Needs).Select(n => n.Id)];
        return new RideAlongList(
            RideAlongDue.Of(
                agency.Roster.Nurses, made, ahead, await FirstDaysAsync(db, under, cancel), agency.Files.Policy, agency.Today),
            [.. agency.Roster.Nurses.Where(Supervised.BySupervisor)],
            [.. made.OrderByDescending(m => m.Day).ThenByDescending(m => m.RecordedAt).Take(Listed)],
            [.. all.Where(r => back.ContainsKey(r.Id)).Select(r => (r, back[r.Id])).OrderByDescending(r => r.Item2.At).Take(Listed)],
            agency.Today);
    }

    private static async Task<ImmutableArray<WeekVisit>> AheadAsync(AgencyDb db, LocalDate thisWeek, PlannedWeek? draft, CancellationToken cancel)
    {
        var visits = ImmutableArray.CreateBuilder<WeekVisit>();
        foreach (LocalDate monday in await WeekStore.PublishedWeeksAsync(db, cancel))
        {
            if (monday >= thisWeek && monday != draft?.FirstDay) visits.AddRange((await WeekStore.PublishedAsync(db, monday, cancel))!.Week.Visits);
        }

        if (draft is not null) visits.AddRange(draft.Visits);
        return visits.ToImmutable();
    }

    private static async Task<Dictionary<string, LocalDate>> FirstDaysAsync(AgencyDb db, string[] nurses, CancellationToken cancel)
    {
        long[] published = await db.Weeks.AsNoTracking().Where(w => !w.IsDraft).Select(w => w.Row).ToArrayAsync(cancel);
        var days = await db.Visits.AsNoTracking()
            .Where(v => nurses.Contains(v.Nurse) && published.Contains(EF.Property<long>(v, VisitMapping.Week)))
            .Select(v => new { v.Nurse, v.Day }).Distinct().ToListAsync(cancel);
        return days.GroupBy(d => d.Nurse).ToDictionary(g => g.Key, g => g.Min(d => d.Day));
    }
}
