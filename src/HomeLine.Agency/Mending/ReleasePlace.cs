using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Mending;

/// <summary>A place held for a referral is let go: the referral was turned down, or the patient is on the roster and planned.</summary>
public sealed class ReleasePlace(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>Lets it go, with who and why. Needs <see cref="AgencyAction.ReportProblem"/>. Refused with <c>no-place-held</c> when none is held any more.</summary>
    public async Task<Outcome<FiledTrouble>> ReleaseAsync(Actor actor, string id, string why, CancellationToken cancel)
    {
        Outcome<FiledTrouble> done = await AgencyWork.DoAsync<FiledTrouble>(databases, clock, actor, AgencyAction.ReportProblem, async (db, agency) =>
        {
            FiledTrouble? filed = await db.Troubles.SingleOrDefaultAsync(t => t.Id == id, cancel);
            if (filed is not { Entry: CanWeTakeIt asked } || HeldPlaces.Of(agency).All(h => h.Trouble != id))
                return new Refusal("no-place-held", "No place is held under this number any more.", "Look at today again.");
            if (string.IsNullOrWhiteSpace(why)) return new Refusal("release-reason-missing", "It is not said why the place is let go.", "Write it in a few words, for example: went to another agency.");
            db.Entry(filed).Property(t => t.Entry).CurrentValue = asked with { Released = new PlaceReleased(agency.Now, actor.Name, why.Trim()) };
            await AuditTrail.AppendAsync(db, actor, "release-place", $"trouble {id}", why.Trim(), clock.RealNow(), cancel);
            return filed;
        }, cancel);
        if (done.Succeeded) weeks.Tell(new WeekChanged(done.Value.Week, -1, actor.Name, $"{done.Value.Title} The place is let go"));
        return done;
    }
}
