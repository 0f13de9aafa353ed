using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Supervision;

/// <summary>A ride-along was recorded wrongly: it counts no more, and what was written stays readable with the reason.</summary>
public sealed class TakeRideAlongBack(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.RecordRideAlong"/>. A clinical manager takes anybody's back, a nurse those on which she went along. Refused with
    /// <c>ride-unknown</c>, <c>ride-not-yours</c> or <c>ride-back-without-reason</c>.
    /// </summary>
    public Task<Outcome<RideAlongTakenBack>> TakeBackAsync(Actor actor, string id, string why, CancellationToken cancel) =>
        AgencyWork.DoAsync<RideAlongTakenBack>(databases, clock, actor, AgencyAction.RecordRideAlong, async (db, agency) =>
        {
            RideAlong? ride = await db.RideAlongs.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancel);
            if (ride is null || await db.RideAlongsTakenBack.AsNoTracking().AnyAsync(b => b.Ride == id, cancel))
                return new Refusal("ride-unknown", "No such ride-along counts any more.", "Look at the list again.");
            if (!actor.Roles.Contains(AgencyRole.ClinicalManager) && actor.NurseId != ride.Supervisor)
                return new Refusal("ride-not-yours", "Who went along takes it back, or a clinical manager.", "Ask one of them.");
            if (string.IsNullOrWhiteSpace(why)) return new Refusal("ride-back-without-reason", "It is not said what was wrong with it.", "Write it in a few words.");
            var back = new RideAlongTakenBack { Ride = id, Why = why.Trim(), By = actor.Name, At = agency.Now };
            db.RideAlongsTakenBack.Add(back);
            await AuditTrail.AppendAsync(db, actor, "take-ride-along-back", $"nurse {ride.Nurse}", $"{id} of {ride.Day:uuuu-MM-dd}: {back.Why}", clock.RealNow(), cancel);
            return back;
        }, cancel);
}
