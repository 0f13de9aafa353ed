using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Recording;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>An exception to policy for one patient, as entered.</summary>
public sealed record ExceptionEntry(PatientId Patient, string RuleId, decimal Value, string Owner, LocalDate? Through, string Reason);

/// <summary>An exception that was kept, and what follows from it.</summary>
public sealed record KeptException(CareException Exception, ImmutableArray<RecordingReply> Told);

/// <summary>The exception register: each has an owner, a reason and an end, and a new one takes the place of the old.</summary>
public sealed class ExceptPatient(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.EditPolicy"/>. Without an end it gets the longest that policy allows.</summary>
    public Task<Outcome<KeptException>> ExceptAsync(Actor actor, ExceptionEntry entry, CancellationToken cancel) => AgencyWork.DoAsync<KeptException>(databases, clock, actor, AgencyAction.EditPolicy, async (db, agency) =>
    {
        if (agency.Roster.Patients.All(p => p.Id != entry.Patient))
            return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        BeforeExcepting before = BeforeExcepting.Of(
            entry.Patient, entry.RuleId.Trim(), entry.Value, entry.Owner.Trim(), entry.Through, entry.Reason.Trim(), agency.Files.Policy, agency.Today);
        if (Replies.Refusal(before.Replies, "") is { } refused) return refused;
        CareException? old = await db.Exceptions.SingleOrDefaultAsync(x => x.Patient == entry.Patient && x.RuleId == before.Exception.RuleId, cancel);
        if (old is null) db.Exceptions.Add(before.Exception);
        else db.Entry(old).CurrentValues.SetValues(before.Exception);
        await AuditTrail.AppendAsync(db, actor, "except", $"{entry.Patient} {before.Exception.RuleId}", $"{entry.Owner.Trim()}: {entry.Reason.Trim()}", clock.RealNow(), cancel);
        return new KeptException(before.Exception, before.Replies);
    }, cancel);
}
