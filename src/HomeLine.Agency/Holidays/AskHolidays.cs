using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Holidays;

/// <summary>The agency's calendar of holidays.</summary>
/// <param name="Today">Today at the branch.</param>
/// <param name="Ahead">Those that stand, from today on, by day.</param>
/// <param name="Behind">Those that are over or were taken back, newest first.</param>
public sealed record HolidayCalendar(LocalDate Today, ImmutableArray<HolidayRow> Ahead, ImmutableArray<Holiday> Behind);

/// <summary>A holiday as it stands today.</summary>
/// <param name="Holiday">The holiday.</param>
/// <param name="OnCall">Names of those on call that day.</param>
/// <param name="Working">Names of those who work it all the same, as was said.</param>
/// <param name="StillHours">Names of those who have hours on it although nobody said so: they came later, or their day off was changed.</param>
/// <param name="Published">Published visits that lie on it, of nurses who are off.</param>
public sealed record HolidayRow(Holiday Holiday, ImmutableArray<string> OnCall, ImmutableArray<string> Working, ImmutableArray<string> StillHours, int Published);

/// <summary>Which days the agency keeps, and who works on them.</summary>
public sealed class AskHolidays(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeeWeek"/>.</summary>
    public async Task<Outcome<HolidayCalendar>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        List<Holiday> all = await db.Holidays.AsNoTracking().OrderBy(h => h.Day).ToListAsync(cancel);
        var ahead = ImmutableArray.CreateBuilder<HolidayRow>();
        foreach (Holiday holiday in all.Where(h => h.Stands && h.Day >= agency.Today))
        {
            HolidayCrew crew = HolidayCrew.Of(agency.Roster.Nurses, holiday.Day, holiday.Works);
            var off = agency.Roster.Nurses.Except(crew.OnCall).Except(crew.Working).Except(crew.Off).Select(n => n.Id).ToHashSet();
            TouchedVisits touched = await TouchedVisits.OfAsync(db, agency, off, holiday.Day, holiday.Day, cancel);
            ahead.Add(new HolidayRow(holiday, Names(crew.OnCall), Names(crew.Working), Names(crew.Off), touched.Visits.Length));
        }

        return new HolidayCalendar(agency.Today, ahead.ToImmutable(), [.. all.Where(h => !h.Stands || h.Day < agency.Today).Reverse<Holiday>()]);
    }

    private static ImmutableArray<string> Names(ImmutableArray<NurseFile> nurses) => [.. nurses.Select(n => n.Name)];
}
