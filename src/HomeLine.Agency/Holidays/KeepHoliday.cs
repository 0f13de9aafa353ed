using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Holidays;

/// <summary>A day on which nobody works ordinary hours.</summary>
/// <param name="Day">The day; empty when it was not said.</param>
/// <param name="Name">What it is called.</param>
public sealed record HolidayEntry(LocalDate? Day, string Name)
{
    /// <summary>Nurses who work it all the same, besides those on call.</summary>
    public ImmutableArray<string> Works { get; init; } = [];
}

/// <summary>A nurse named.</summary>
public sealed record HolidayNurse(string Id, string Name);

/// <summary>What a holiday would do.</summary>
/// <param name="Day">The day.</param>
/// <param name="Off">Nurses who would be off.</param>
/// <param name="OnCall">Names of those who are on call that day and keep their hours.</param>
/// <param name="Working">Nurses who work it all the same.</param>
/// <param name="Affected">Published visits that lie in it, by start, in words.</param>
/// <param name="Told">How many of their families were told a range.</param>
public sealed record HolidayEffect(
    LocalDate Day, ImmutableArray<HolidayNurse> Off, ImmutableArray<string> OnCall, ImmutableArray<HolidayNurse> Working, ImmutableArray<string> Affected, int Told);

/// <summary>
/// Puts a holiday on the calendar, ahead or late, as leave of everybody who is not on call that day and does not work it all the same: the planner then puts what
/// falls due on it on a day with hours. Published visits on it are listed first; they stay published until somebody plans anew or moves them.
/// </summary>
public sealed class KeepHoliday(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>What the holiday would touch; nothing is stored. Needs <see cref="AgencyAction.PlanWeek"/>.</summary>
    public async Task<Outcome<HolidayEffect>> LookAsync(Actor actor, HolidayEntry entry, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        return read.Succeeded ? await EffectAsync(db, read.Value, entry, cancel) : read.Refusal!;
    }

    /// <summary>
    /// Keeps the holiday; entered once more for the same day, those who have hours on it by now are off as well. Needs <see cref="AgencyAction.PlanWeek"/>.
    /// Refused with <c>holiday-touches-visits</c> unless the person has seen as many published visits on it as there are.
    /// </summary>
    public async Task<Outcome<HolidayEffect>> KeepAsync(Actor actor, HolidayEntry entry, int seenVisits, CancellationToken cancel)
    {
        Outcome<HolidayEffect> kept = await AgencyWork.DoAsync<HolidayEffect>(databases, clock, actor, AgencyAction.PlanWeek, async (db, agency) =>
        {
            Outcome<HolidayEffect> effect = await EffectAsync(db, agency, entry, cancel);
            if (!effect.Succeeded) return effect;
            if (effect.Value.Affected.Length != seenVisits)
                return new Refusal("holiday-touches-visits", $"{effect.Value.Affected.Length} published visits lie on this day.", "Look at the list first, then keep the holiday.");
            LocalDate day = effect.Value.Day;
            string[] off = [.. effect.Value.Off.Select(n => n.Id)];
            Holiday holiday = await PutDownAsync(db, actor, agency, day, entry, off, cancel);
            foreach (NurseFile file in await db.Nurses.Where(n => off.Contains(n.Id)).ToListAsync(cancel))
                db.Entry(file).Property(n => n.Leaves).CurrentValue = file.Leaves.Add(HolidayCrew.LeaveOf(day, holiday.Name));
            await db.SaveChangesAsync(cancel);
            await AuditTrail.AppendAsync(db, actor, "keep-holiday", $"day {day:uuuu-MM-dd}", $"{holiday.Name}: off {string.Join(" ", off)}", clock.RealNow(), cancel);
            return effect;
        }, cancel);
        if (kept.Succeeded)
            weeks.Tell(new WeekChanged(AgencyAtHand.WeekOf(kept.Value.Day), -1, actor.Name, $"{VisitWords.LongDay(kept.Value.Day)} is a holiday"));
        return kept;
    }

    /// <summary>The row of the calendar: a new one, or the one that stands with those who are off as well.</summary>
    private static async Task<Holiday> PutDownAsync(AgencyDb db, Actor actor, AgencyAtHand agency, LocalDate day, HolidayEntry entry, string[] off, CancellationToken cancel)
    {
        if (await StandingAsync(db.Holidays, day, cancel) is { } stands)
        {
            db.Entry(stands).Property(h => h.Off).CurrentValue = [.. stands.Off.Union(off)];
            db.Entry(stands).Property(h => h.Works).CurrentValue = entry.Works;
            return stands;
        }

        int before = await db.Holidays.CountAsync(cancel);
        var holiday = new Holiday
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"holiday {before + 1}"),
            Day = day,
            Name = entry.Name.Trim(),
            Works = entry.Works,
            Off = [.. off],
            PutDownBy = actor.Name,
            PutDownAt = agency.Now,
        };
        db.Holidays.Add(holiday);
        return holiday;
    }

    private static async Task<Outcome<HolidayEffect>> EffectAsync(AgencyDb db, AgencyAtHand agency, HolidayEntry entry, CancellationToken cancel)
    {
        if (entry.Day is not { } day) return new Refusal("holiday-day-missing", "The day is missing.", "Enter the day.");
        if (day < agency.Today) return new Refusal("holiday-past", "That day lies behind.", "Enter a day from today on.");
        if (string.IsNullOrWhiteSpace(entry.Name)) return new Refusal("holiday-without-name", "A holiday needs a name.", "Write what it is called.");
        HolidayCrew crew = HolidayCrew.Of(agency.Roster.Nurses, day, entry.Works);
        if (crew.Off.IsEmpty && await StandingAsync(db.Holidays.AsNoTracking(), day, cancel) is { } stands)
            return new Refusal("holiday-twice", $"{VisitWords.LongDay(day)} is a holiday already: {stands.Name}.", "Choose another day, or take that one back first.");
        TouchedVisits touched = await TouchedVisits.OfAsync(db, agency, crew.Off.Select(n => n.Id).ToHashSet(), day, day, cancel);
        return new HolidayEffect(
            day, [.. crew.Off.Select(Named)], [.. crew.OnCall.Select(n => n.Name)], [.. crew.Working.Select(Named)], touched.Words, touched.Told);
    }

    private static async Task<Holiday?> StandingAsync(IQueryable<Holiday> holidays, LocalDate day, CancellationToken cancel) =>
        (await holidays.Where(h => h.Day == day).ToListAsync(cancel)).FirstOrDefault(h => h.Stands);

    private static HolidayNurse Named(NurseFile nurse) => new(nurse.Id, nurse.Name);
}
