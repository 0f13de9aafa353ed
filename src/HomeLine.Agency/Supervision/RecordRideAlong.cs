using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Supervision;

/// <summary>A ride-along as entered.</summary>
/// <param name="Nurse">The nurse who was looked on.</param>
/// <param name="Supervisor">Who went along.</param>
/// <param name="Day">The day; empty when it was not said.</param>
/// <param name="Note">What was looked at; may be empty.</param>
public sealed record RideAlongEntry(string Nurse, string Supervisor, LocalDate? Day, string Note);

/// <summary>Writes down that a supervision took place; the next one is due from that day.</summary>
public sealed class RecordRideAlong(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.RecordRideAlong"/>. A clinical manager records anybody's, a nurse those on which she went along. Refused for who needs
    /// no supervision, who may not supervise, days to come, and what is recorded already.
    /// </summary>
    public Task<Outcome<RideAlong>> RecordAsync(Actor actor, RideAlongEntry entry, CancellationToken cancel) =>
        AgencyWork.DoAsync<RideAlong>(databases, clock, actor, AgencyAction.RecordRideAlong, async (db, agency) =>
        {
            NurseFile? nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == entry.Nurse), supervisor = agency.Roster.Nurses.FirstOrDefault(n => n.Id == entry.Supervisor);
            if (nurse is null || supervisor is null) return new Refusal("nurse-unknown", "There is no such nurse.", "Choose a nurse on the list.");
            if (!Supervised.Needs(nurse)) return Faults.NotNeeded(nurse);
            if (!Supervised.BySupervisor(supervisor)) return Faults.NoSupervisor(supervisor);
            if (!actor.Roles.Contains(AgencyRole.ClinicalManager) && actor.NurseId != supervisor.Id)
                return new Refusal("ride-not-yours", "Who went along records it, or a clinical manager.", "Ask one of them.");
            if (entry.Day is not { } day) return new Refusal("ride-day-missing", "The day is missing.", "Enter the day of the visit.");
            if (day > agency.Today) return new Refusal("ride-in-future", "That day has not come yet.", "Record it once it took place.");
            string[] thatDay = await db.RideAlongs.AsNoTracking().Where(r => r.Nurse == nurse.Id && r.Day == day).Select(r => r.Id).ToArrayAsync(cancel);
            int back = await db.RideAlongsTakenBack.AsNoTracking().CountAsync(b => thatDay.Contains(b.Ride), cancel);
            if (thatDay.Length > back)
                return new Refusal("ride-twice", $"A ride-along with {nurse.Name} on that day is recorded already.", "Look at the list below.");
            WeekVisit? planned = (await WeekStore.PublishedAsync(db, AgencyAtHand.WeekOf(day), cancel))?.Week.Visits
                .FirstOrDefault(v => v.Day == day && v.Nurse == nurse.Id && v.Second == supervisor.Id);
            int before = await db.RideAlongs.CountAsync(cancel);
            var made = new RideAlong
            {
                Id = $"ride {before + 1}",
                Nurse = nurse.Id,
                Supervisor = supervisor.Id,
                SupervisorName = supervisor.Name,
                Day = day,
                Note = entry.Note.Trim(),
                Visit = planned?.Id,
                OnVisit = planned is null ? "" : $"{planned.Patient} {VisitWords.LongDay(planned.Day)} {VisitWords.Time(planned.Start)}",
                Round = back,
                RecordedBy = actor.Name,
                RecordedAt = agency.Now,
            };
            db.RideAlongs.Add(made);
            await AuditTrail.AppendAsync(
                db, actor, "record-ride-along", $"nurse {nurse.Id}", $"{supervisor.Id} went along on {day:uuuu-MM-dd}", clock.RealNow(), cancel);
            return made;
        }, cancel);

    /// <summary>What is refused both when a ride-along is planned and when it is recorded.</summary>
    internal static class Faults
    {
        public static Refusal NotNeeded(NurseFile nurse) =>
            new("ride-not-needed", $"{nurse.Name} does not work under supervision.", "Choose a practical nurse or a trainee.");

        public static Refusal NoSupervisor(NurseFile nurse) =>
            new("ride-no-supervisor", $"{nurse.Name} may not supervise.", "A registered nurse who is no trainee goes along.");
    }
}
