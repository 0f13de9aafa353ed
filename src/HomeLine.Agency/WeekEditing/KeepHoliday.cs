using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>A day on which nobody works ordinary hours.</summary>
/// <param name="Day">The day; empty when it was not said.</param>
/// <param name="Name">What it is called.</param>
public sealed record HolidayEntry(LocalDate? Day, string Name);

/// <summary>What a holiday would do.</summary>
/// <param name="Day">The day.</param>
/// <param name="Off">Names of the nurses who would be off.</param>
/// <param name="OnCall">Names of those who are on call that day and keep their hours.</param>
/// <param name="Affected">Published visits that lie in it, by start, in words.</param>
/// <param name="Told">How many of their families were told a range.</param>
public sealed record HolidayEffect(LocalDate Day, ImmutableArray<string> Off, ImmutableArray<string> OnCall, ImmutableArray<string> Affected, int Told);

/// <summary>
/// Puts a holiday down, as leave of everybody who is not on call that day: the planner then puts what falls due on it on a day with hours. Published visits on
/// it are listed first; they stay published until somebody plans anew or moves them.
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
    /// Keeps the holiday. Needs <see cref="AgencyAction.PlanWeek"/>. Refused with <c>holiday-touches-visits</c> unless the person has seen as many published
    /// visits on it as there are.
    /// </summary>
    public async Task<Outcome<HolidayEffect>> KeepAsync(Actor actor, HolidayEntry entry, int seenVisits, CancellationToken cancel)
    {
        Outcome<HolidayEffect> kept = await AgencyWork.DoAsync<HolidayEffect>(databases, clock, actor, AgencyAction.PlanWeek, async (db, agency) =>
        {
            Outcome<HolidayEffect> effect = await EffectAsync(db, agency, entry, cancel);
            if (!effect.Succeeded) return effect;
            if (effect.Value.Affected.Length != seenVisits)
                return new Refusal("holiday-touches-visits", $"{effect.Value.Affected.Length} published visits lie on this day.", "Look at the list first, then keep the holiday.");
            string[] off = [.. agency.Roster.Nurses.Where(n => IsOff(n, effect.Value.Day)).Select(n => n.Id)];
            foreach (NurseFile file in await db.Nurses.Where(n => off.Contains(n.Id)).ToListAsync(cancel))
                db.Entry(file).Property(n => n.Leaves).CurrentValue = file.Leaves.Add(new Leave(effect.Value.Day, effect.Value.Day, entry.Name.Trim()));
            await db.SaveChangesAsync(cancel);
            await AuditTrail.AppendAsync(
                db, actor, "keep-holiday", $"day {effect.Value.Day:uuuu-MM-dd}", $"{entry.Name.Trim()}: off {string.Join(" ", off)}", clock.RealNow(), cancel);
            return effect;
        }, cancel);
        if (kept.Succeeded)
            weeks.Tell(new WeekChanged(AgencyAtHand.WeekOf(kept.Value.Day), -1, actor.Name, $"{VisitWords.LongDay(kept.Value.Day)} is a holiday"));
        return kept;
    }

    private static async Task<Outcome<HolidayEffect>> EffectAsync(AgencyDb db, AgencyAtHand agency, HolidayEntry entry, CancellationToken cancel)
    {
        if (entry.Day is not { } day) return new Refusal("holiday-day-missing", "The day is missing.", "Enter the day.");
        if (day < agency.Today) return new Refusal("holiday-past", "That day lies behind.", "Enter a day from today on.");
        if (string.IsNullOrWhiteSpace(entry.Name)) return new Refusal("holiday-without-name", "A holiday needs a name.", "Write what it is called.");
        NurseFile[] off = [.. agency.Roster.Nurses.Where(n => IsOff(n, day))];
        if (off.Length == 0)
            return new Refusal("holiday-nobody", "Nobody would be off: whoever is not on call that day does not work already.", "Choose another day, or nothing has to be done.");
        TouchedVisits touched = await TouchedVisits.OfAsync(db, agency, off.Select(n => n.Id).ToHashSet(), day, day, cancel);
        return new HolidayEffect(
            day, [.. off.Select(n => n.Name)], [.. agency.Roster.Nurses.Where(n => IsOnCall(n, day)).Select(n => n.Name)], touched.Words, touched.Told);
    }

    private static bool IsOff(NurseFile nurse, LocalDate day) =>
        !IsOnCall(nurse, day) && nurse.Week.Any(w => !w.OnCall && w.Weekday == day.DayOfWeek) && !nurse.Leaves.Any(l => l.IsAllDay(day));

    private static bool IsOnCall(NurseFile nurse, LocalDate day) => nurse.Week.Any(w => w.OnCall && w.Weekday == day.DayOfWeek) && !nurse.Leaves.Any(l => l.IsAllDay(day));
}
