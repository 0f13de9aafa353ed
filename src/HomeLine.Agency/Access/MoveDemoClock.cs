using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>Moves the demonstration's fixed now, so that its week can be lived through. A real agency's clock cannot be moved.</summary>
public sealed class MoveDemoClock(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.SeeWeek"/>. Refused with <c>not-a-demo</c> for a real agency.</summary>
    public async Task<Outcome<AgencyProfile>> MoveAsync(Actor actor, LocalDateTime branchTime, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        AgencyProfile? profile = await db.Profile.SingleOrDefaultAsync(cancel);
        if (profile is not { IsDemo: true })
            return new Refusal("not-a-demo", "Only the demonstration's clock can be moved.", "A real agency lives by the real clock.");
        db.Entry(profile).Property(p => p.FixedNow).CurrentValue = branchTime.InZoneLeniently(profile.Zone).ToInstant();
        await AuditTrail.AppendAsync(db, actor, "move-demo-clock", "demo", branchTime.ToString("uuuu-MM-dd HH:mm", null), clock.RealNow(), cancel);
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        return profile;
    }
}
