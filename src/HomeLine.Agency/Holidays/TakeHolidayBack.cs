using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Holidays;

/// <summary>What taking a holiday back did.</summary>
/// <param name="Day">The day.</param>
/// <param name="Name">What it was called.</param>
/// <param name="Working">Names of nurses who have their hours again.</param>
/// <param name="Changed">Names of nurses whose leave of that day was changed since and stays as it is.</param>
public sealed record HolidayGone(LocalDate Day, string Name, ImmutableArray<string> Working, ImmutableArray<string> Changed);

/// <summary>
/// Takes a holiday back: the days off that came from it go again, but those somebody changed since. What is published stays as it is until somebody plans anew.
/// </summary>
public sealed class TakeHolidayBack(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>Needs <see cref="AgencyAction.PlanWeek"/>. Refused with <c>holiday-unknown</c>, <c>holiday-past</c> or <c>holiday-without-reason</c>.</summary>
    public async Task<Outcome<HolidayGone>> TakeBackAsync(Actor actor, string id, string why, CancellationToken cancel)
    {
        Outcome<HolidayGone> done = await AgencyWork.DoAsync<HolidayGone>(databases, clock, actor, AgencyAction.PlanWeek, async (db, agency) =>
        {
            if (await db.Holidays.SingleOrDefaultAsync(h => h.Id == id, cancel) is not { Stands: true } holiday)
                return new Refusal("holiday-unknown", "That holiday is no longer on the calendar.", "Look at the calendar again.");
            if (holiday.Day < agency.Today) return new Refusal("holiday-past", "That day lies behind.", "What was is not changed any more.");
            if (string.IsNullOrWhiteSpace(why)) return new Refusal("holiday-without-reason", "It is not said why it is taken back.", "Write it in a few words.");
            Leave own = HolidayCrew.LeaveOf(holiday.Day, holiday.Name);
            string[] off = [.. holiday.Off];
            var (working, changed) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
            foreach (NurseFile file in await db.Nurses.Where(n => off.Contains(n.Id)).ToListAsync(cancel))
            {
                if (file.Leaves.Contains(own)) db.Entry(file).Property(n => n.Leaves).CurrentValue = file.Leaves.Remove(own);
                (file.Leaves.Where(l => l != own).Any(l => l.IsAllDay(holiday.Day)) ? changed : working).Add(file.Name);
            }

            db.Entry(holiday).Property(h => h.TakenBack).CurrentValue = new HolidayEnd(agency.Now, actor.Name, why.Trim());
            await db.SaveChangesAsync(cancel);
            await AuditTrail.AppendAsync(db, actor, "take-holiday-back", $"day {holiday.Day:uuuu-MM-dd}", $"{holiday.Name}: {why.Trim()}", clock.RealNow(), cancel);
            return new HolidayGone(holiday.Day, holiday.Name, working.ToImmutable(), changed.ToImmutable());
        }, cancel);
        if (done.Succeeded)
            weeks.Tell(new WeekChanged(AgencyAtHand.WeekOf(done.Value.Day), -1, actor.Name, $"{VisitWords.LongDay(done.Value.Day)} is no longer a holiday"));
        return done;
    }
}
