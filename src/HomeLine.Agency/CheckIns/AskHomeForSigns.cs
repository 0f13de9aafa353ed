using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.CheckIns;

/// <summary>Says of a home that a nurse who goes alone gives a sign on arrival and one when she is out again, or that she need not any more.</summary>
public sealed class AskHomeForSigns(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.KeepHomeSigns"/> and a reason. It counts from now on, for visits of today too; a later import does not take it back.
    /// Refused with <c>patient-unknown</c>, <c>signs-reason-missing</c>, and <c>signs-by-two</c> where two people come, who always give them.
    /// </summary>
    public Task<Outcome<Patient>> KeepAsync(Actor actor, PatientId patient, bool asks, string reason, CancellationToken cancel) =>
        AgencyWork.DoAsync<Patient>(databases, clock, actor, AgencyAction.KeepHomeSigns, async (db, agency) =>
        {
            if (agency.Roster.Patients.FirstOrDefault(p => p.Id == patient) is not { } home)
                return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
            if (home.CrewSize > 1)
                return new Refusal("signs-by-two", "Two people come to this home, and they always give signs.", "Leave it as it is.");
            if (string.IsNullOrWhiteSpace(reason))
                return new Refusal("signs-reason-missing", "It is not said why.", "Say it in a few words, for example: unlit lane, by daylight only.");
            if (home.AsksForSigns == asks) return home;
            Patient stored = await db.Patients.SingleAsync(p => p.Id == patient, cancel);
            db.Entry(stored).Property(p => p.AsksForSigns).CurrentValue = asks;
            await AuditTrail.AppendAsync(db, actor, "home-signs", patient.Value, $"{(asks ? "signs asked for" : "no signs any more")}: {reason.Trim()}", clock.RealNow(), cancel);
            return home with { AsksForSigns = asks };
        }, cancel);
}
