using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Visits;

/// <summary>What signed visits still wait for, and the visits signed last.</summary>
/// <param name="Notices">Practitioners to be told, the oldest first.</param>
/// <param name="ToCoSign">Records that wait for a supervisor, the oldest first.</param>
/// <param name="Latest">The records signed last, the latest first.</param>
public sealed record VisitList(ImmutableArray<NoticeRow> Notices, ImmutableArray<RecordRow> ToCoSign, ImmutableArray<RecordRow> Latest);

/// <summary>A practitioner to be told, with the patient.</summary>
public sealed record NoticeRow(PractitionerNotice Notice, string PatientName);

/// <summary>A record with the patient.</summary>
public sealed record RecordRow(VisitRecord Record, string PatientName, bool IsAmended);

/// <summary>Answers what visits wait for.</summary>
public sealed class AskVisitList(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    private const int MostListed = 40;

    /// <summary>Needs <see cref="AgencyAction.TellPractitioner"/>.</summary>
    public async Task<Outcome<VisitList>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.TellPractitioner) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        var names = read.Value.Roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        List<PractitionerNotice> open = await db.PractitionerNotices.AsNoTracking().Where(n => n.ToldAt == null).ToListAsync(cancel);
        var signed = await db.CoSignatures.AsNoTracking().Select(s => s.Record).ToListAsync(cancel);
        var amended = await db.VisitRecords.AsNoTracking().Where(r => r.Amends != null).Select(r => r.Amends!).ToListAsync(cancel);
        List<VisitRecord> waiting = await db.VisitRecords.AsNoTracking().Where(r => r.NeedsCoSign && !signed.Contains(r.Id) && !amended.Contains(r.Id)).ToListAsync(cancel);
        List<VisitRecord> latest = await db.VisitRecords.AsNoTracking().OrderByDescending(r => EF.Property<long>(r, RowKey.Row)).Take(MostListed).ToListAsync(cancel);
        RecordRow Row(VisitRecord record) => new(record, names[record.Patient], amended.Contains(record.Id));
        return new VisitList(
            [.. open.OrderBy(n => n.Since).Select(n => new NoticeRow(n, names[n.Patient]))],
            [.. waiting.OrderBy(r => r.SignedAt).Select(Row)],
            [.. latest.Select(Row)]);
    }
}
