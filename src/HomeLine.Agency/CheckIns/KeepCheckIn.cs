using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.CheckIns;

/// <summary>Who is at a home that asks for signs says that she arrived, or that she is out again.</summary>
public sealed class KeepCheckIn(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.RecordVisit"/>. Given twice it counts once. Refused with <c>visit-not-found</c> unless it is a visit of today,
    /// <c>check-in-not-yours</c> for anybody who does not go there, and <c>check-in-not-asked</c> where the home asks for none.
    /// </summary>
    public Task<Outcome<CheckIn>> KeepAsync(Actor actor, string visit, bool isOut, CancellationToken cancel) =>
        AgencyWork.DoAsync<CheckIn>(databases, clock, actor, AgencyAction.RecordVisit, async (db, agency) =>
        {
            WeekVisit? planned = (await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week.Visits.FirstOrDefault(v => v.Id == visit && v.Day == agency.Today);
            if (planned is null) return new Refusal("visit-not-found", "There is no such visit today.", "Load your day anew.");
            if (actor.NurseId is null || (planned.Nurse != actor.NurseId && planned.Second != actor.NurseId))
                return new Refusal("check-in-not-yours", "Only who goes there gives the sign.", "Ask her to give it, or call her.");
            if (agency.Roster.Patients.FirstOrDefault(p => p.Id == planned.Patient) is not { } patient || !SafetyTimer.Asks(patient))
                return new Refusal("check-in-not-asked", "This home asks for no sign.", "Go on with the visit.");
            CheckIn? known = await db.CheckIns.AsNoTracking().FirstOrDefaultAsync(c => c.Visit == visit && c.IsOut == isOut && c.Nurse == actor.NurseId, cancel);
            if (known is not null) return known;
            var sign = new CheckIn { Visit = visit, Day = planned.Day, Nurse = actor.NurseId, IsOut = isOut, At = agency.Now };
            db.CheckIns.Add(sign);
            await AuditTrail.AppendAsync(db, actor, "check-in", $"visit {visit}", isOut ? "out again" : "arrived", clock.RealNow(), cancel);
            return sign;
        }, cancel);
}
