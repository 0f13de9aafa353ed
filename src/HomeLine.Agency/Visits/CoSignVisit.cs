using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Visits;

/// <summary>A supervisor signs below a visit: a clinical manager, or a registered nurse who did not make it.</summary>
public sealed class CoSignVisit(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.CoSignVisit"/>. Signed once; a note says what the supervisor looked at.</summary>
    public Task<Outcome<CoSignature>> SignAsync(Actor actor, string record, string note, CancellationToken cancel) =>
        AgencyWork.DoAsync<CoSignature>(databases, clock, actor, AgencyAction.CoSignVisit, async (db, agency) =>
        {
            VisitRecord? found = await db.VisitRecords.AsNoTracking().SingleOrDefaultAsync(r => r.Id == record, cancel);
            if (found is null || !found.NeedsCoSign) return new Refusal("no-cosign-needed", "This record waits for no second signature.", "Look at the list again.");
            if (await db.CoSignatures.AsNoTracking().AnyAsync(s => s.Record == record, cancel))
                return new Refusal("cosigned-already", "This record was co-signed already.", "Look at the record again.");
            NurseFile? nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == actor.NurseId);
            if (found.SignedBy == actor.UserId || (found.Nurse.Length > 0 && found.Nurse == actor.NurseId))
                return new Refusal("cosign-own", "Nobody co-signs a visit of her own.", "Ask a supervisor.");
            if (!actor.Roles.Contains(AgencyRole.ClinicalManager) && nurse?.Credential is not "RN")
                return new Refusal("cosign-not-yours", "A registered nurse or a clinical manager co-signs.", "Ask one of them.");
            var signature = new CoSignature(record, nurse?.Name ?? actor.Name, actor.UserId, agency.Now, note.Trim());
            db.CoSignatures.Add(signature);
            await AuditTrail.AppendAsync(db, actor, "cosign-visit", $"{found.Patient} visit {record}", note.Trim(), clock.RealNow(), cancel);
            return signature;
        }, cancel);
}
