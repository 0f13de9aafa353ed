using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Whole days off of a nurse, both included.</summary>
public sealed record LeaveEntry(string Nurse, LocalDate From, LocalDate Through, string Reason);

/// <summary>What a leave would do to what is published.</summary>
/// <param name="Nurse">Her name.</param>
/// <param name="Affected">Published visits in it, by start, in words.</param>
/// <param name="Told">How many of their families were told a range.</param>
/// <param name="Weeks">First days of the weeks that have to be mended.</param>
public sealed record LeaveEffect(string Nurse, ImmutableArray<string> Affected, int Told, ImmutableArray<LocalDate> Weeks);

/// <summary>Puts a nurse's leave down. Published visits in it are listed first; they stay published until somebody moves them.</summary>
public sealed class KeepLeave(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>What the leave would touch; nothing is stored. Needs <see cref="AgencyAction.PlanWeek"/>.</summary>
    public async Task<Outcome<LeaveEffect>> LookAsync(Actor actor, LeaveEntry entry, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        return read.Succeeded ? await EffectAsync(db, read.Value, entry, cancel) : read.Refusal!;
    }

    /// <summary>
    /// Keeps the leave. Needs <see cref="AgencyAction.PlanWeek"/>. Refused with <c>leave-touches-visits</c> unless the person has seen as many published
    /// visits in it as there are.
    /// </summary>
    public async Task<Outcome<LeaveEffect>> KeepAsync(Actor actor, LeaveEntry entry, int seenVisits, CancellationToken cancel)
    {
        Outcome<LeaveEffect> kept = await AgencyWork.DoAsync<LeaveEffect>(databases, clock, actor, AgencyAction.PlanWeek, async (db, agency) =>
        {
            Outcome<LeaveEffect> effect = await EffectAsync(db, agency, entry, cancel);
            if (!effect.Succeeded) return effect;
            if (effect.Value.Affected.Length != seenVisits)
                return new Refusal("leave-touches-visits", $"{effect.Value.Affected.Length} published visits lie in this leave.", "Look at the list first, then keep the leave.");
            NurseFile file = await db.Nurses.SingleAsync(n => n.Id == entry.Nurse, cancel);
            db.Entry(file).Property(n => n.Leaves).CurrentValue = file.Leaves.Add(new Leave(entry.From, entry.Through, entry.Reason.Trim()));
            await db.SaveChangesAsync(cancel);
            await AuditTrail.AppendAsync(
                db, actor, "keep-leave", $"nurse {entry.Nurse}", $"{entry.From:uuuu-MM-dd} to {entry.Through:uuuu-MM-dd}: {entry.Reason.Trim()}", clock.RealNow(), cancel);
            return effect;
        }, cancel);
        if (kept.Succeeded)
            foreach (LocalDate monday in kept.Value.Weeks) weeks.Tell(new WeekChanged(monday, -1, actor.Name, $"{kept.Value.Nurse} is on leave from {VisitWords.LongDay(entry.From)}"));
        return kept;
    }

    private static async Task<Outcome<LeaveEffect>> EffectAsync(AgencyDb db, AgencyAtHand agency, LeaveEntry entry, CancellationToken cancel)
    {
        if (agency.Roster.Nurses.FirstOrDefault(n => n.Id == entry.Nurse) is not { } nurse)
            return new Refusal("nurse-unknown", "There is no such nurse.", "Choose a nurse on the list.");
        if (entry.Through < entry.From) return new Refusal("leave-ends-before-start", "The last day is before the first.", "Correct one of them.");
        if (string.IsNullOrWhiteSpace(entry.Reason)) return new Refusal("leave-without-reason", "A leave needs a word.", "For example: leave, training, sick.");
        if (nurse.Leaves.Any(l => l.From <= entry.Through && l.Through >= entry.From))
            return new Refusal("leave-twice", $"{nurse.Name} is off on some of these days already.", "Choose other days.");
        TouchedVisits touched = await TouchedVisits.OfAsync(db, agency, new HashSet<string> { entry.Nurse }, entry.From, entry.Through, cancel);
        return new LeaveEffect(nurse.Name, touched.Words, touched.Told, touched.Weeks);
    }
}
