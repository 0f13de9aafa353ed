using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Visits;

/// <summary>Ticks that the practitioner was told of missed or refused care: with who, and what was said.</summary>
public sealed class TellPractitioner(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.TellPractitioner"/>. Refused without who was told and what was said; what was ticked stays as it was.</summary>
    public Task<Outcome<PractitionerNotice>> TellAsync(Actor actor, string notice, string toldTo, string said, CancellationToken cancel) =>
        AgencyWork.DoAsync<PractitionerNotice>(databases, clock, actor, AgencyAction.TellPractitioner, async (db, agency) =>
        {
            PractitionerNotice? open = await db.PractitionerNotices.SingleOrDefaultAsync(n => n.Id == notice, cancel);
            if (open is null || open.ToldAt is not null) return new Refusal("notice-closed", "Nothing of this kind waits to be told.", "Look at the list again.");
            if (string.IsNullOrWhiteSpace(toldTo)) return new Refusal("told-to-missing", "It is not said who was told.", "Write the name.");
            if (string.IsNullOrWhiteSpace(said)) return new Refusal("said-missing", "It is not said what was told and answered.", "Write it in a few words.");
            var row = db.Entry(open);
            row.Property(n => n.ToldAt).CurrentValue = agency.Now;
            row.Property(n => n.ToldTo).CurrentValue = toldTo.Trim();
            row.Property(n => n.ToldBy).CurrentValue = actor.Name;
            row.Property(n => n.Said).CurrentValue = said.Trim();
            await AuditTrail.AppendAsync(db, actor, "tell-practitioner", $"{open.Patient} visit {open.Record}", $"told {toldTo.Trim()}", clock.RealNow(), cancel);
            return open with { ToldAt = agency.Now, ToldTo = toldTo.Trim(), ToldBy = actor.Name, Said = said.Trim() };
        }, cancel);
}
