using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Something that was offered and not answered is looked at again, inside the work under way: the same entry, new answers.</summary>
internal sealed class LookAgainDesk(AgencyDb db, Actor actor, AgencyAtHand agency, Instant realNow)
{
    private static readonly Refusal NoWeek = new("no-week", "No plan is published for this week.", "Plan and publish the week first; until then decide by phone.");

    public async Task<Outcome<FiledTrouble>> TroubleAsync(string id, CancellationToken cancel)
    {
        FiledTrouble? filed = await db.Troubles.SingleOrDefaultAsync(t => t.Id == id, cancel);
        if (filed is null) return new Refusal("trouble-not-found", "There is no such trouble.", "Look at today again.");
        if (filed.State != TroubleState.Open) return new Refusal("already-ended", $"This trouble is ended: {filed.Reason}", "Look at the week.");
        if (await StoppedSinceAsync(db, filed, cancel) is { } stopped) return stopped;
        if ((await WeekStore.PublishedAsync(db, filed.Week, cancel))?.Week is not { } week) return NoWeek;
        Outcome<MendOffer> offer = TroubleAnew.Offer(filed, agency, week, cancel);
        if (!offer.Succeeded) return offer.Refusal!;
        db.Entry(filed).Property(t => t.Offer).CurrentValue = offer.Value;
        db.Entry(filed).Property(t => t.WeekVersion).CurrentValue = week.Version;
        await NoteAsync($"trouble {id}", offer.Value.Answers.Length, cancel);
        return filed;
    }

    public async Task<Outcome<FiledReport>> ReportAsync(string id, CancellationToken cancel)
    {
        FiledReport? filed = await db.Reports.SingleOrDefaultAsync(r => r.Id == id, cancel);
        if (filed is not { Outcome: ReportOutcome.Offered, Result: { } result }) return new Refusal("no-offer", "This report has no answers that wait.", "Report the problem again.");
        if (await StoppedSinceAsync(db, filed.Patient, filed.FiledAt, cancel) is { } stopped) return stopped;
        if ((await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week is not { } week) return NoWeek;
        Outcome<SealOffer> offer = SealOffer.Of(agency.Roster, agency.Files, week, filed.Report, result.Screen.Wording, agency.Now, agency);
        if (!offer.Succeeded) return offer.Refusal!;
        db.Entry(filed).Property(r => r.Result).CurrentValue = result with { Offer = offer.Value.Offer, AnsweredAt = agency.Now };
        await NoteAsync($"report {id}", offer.Value.Offer.Answers.Length, cancel);
        return filed;
    }

    /// <summary>The same for a trouble that is about one patient's own visit. Freed time and a hospital stay are about everybody else's.</summary>
    public static async Task<Refusal?> StoppedSinceAsync(AgencyDb db, FiledTrouble filed, CancellationToken cancel) =>
        filed is { Entry: ScreenedEntry or AtTheDoor, Patient: { } patient } ? await StoppedSinceAsync(db, patient, filed.FiledAt, cancel) : null;

    /// <summary>After a red flag nobody looks for a time, whatever was asked before it.</summary>
    public static async Task<Refusal?> StoppedSinceAsync(AgencyDb db, PatientId patient, Instant since, CancellationToken cancel)
    {
        List<FiledReport> stopped = await db.Reports.AsNoTracking().Where(r => r.Patient == patient && r.Outcome == ReportOutcome.Stopped).ToListAsync(cancel);
        return stopped.Any(r => r.FiledAt >= since)
            ? new Refusal("stopped-since", "A red flag has stopped this patient's visits since.", "No time is looked for. A licensed person decides it under Decisions.")
            : null;
    }

    private Task<AuditEntry> NoteAsync(string what, int answers, CancellationToken cancel) =>
        AuditTrail.AppendAsync(db, actor, "look-again", what, $"{answers} answers", realNow, cancel);
}
