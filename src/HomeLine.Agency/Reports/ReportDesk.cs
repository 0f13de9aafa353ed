using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>One report's work inside its transaction: the stop, the offer, the applied answer.</summary>
internal sealed class ReportDesk(AgencyDb db, Actor actor, AgencyAtHand agency, ProblemReport report, string id, Instant realNow)
{
    /// <summary>The screen stopped: lock the line, hold the visits, list who is alerted. The planner is not asked.</summary>
    /// <param name="screen">The screen that stopped.</param>
    /// <param name="week">The published week.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <param name="underWay">The visit at which it was found: it is under way and not held.</param>
    public async Task<Outcome<ReportResult>> StopAsync(ScreenOutcome screen, PlannedWeek? week, CancellationToken cancel, string? underWay = null)
    {
        RedFlagStop stop = RedFlagStop.Of(agency.Roster, week, report, screen, new EventId($"{id}-lock"), agency.Now, underWay);
        db.LineEvents.Add(stop.Lock with { RecordedAt = realNow, RecordedBy = actor.Name });
        if (stop.Week is { } held && held != week)
        {
            Outcome<PlannedWeek> published = await WeekStore.PublishAsync(db, actor, held, $"Held after report {id}", realNow, cancel);
            if (!published.Succeeded) return published.Refusal!;
        }

        var result = new ReportResult { ReportId = id, Screen = screen, Stopped = stop.Flow };
        AddToTell(stop.Flow.ToTell);
        await FileAsync(result, ReportOutcome.Stopped, cancel);
        return result;
    }

    /// <summary>The screen allows it: the report goes into the ledger, and the planner is asked where the visit could go.</summary>
    public async Task<Outcome<ReportResult>> OfferAsync(ScreenOutcome screen, PlannedWeek? week, CancellationToken cancel)
    {
        if (week is null) return new Refusal("no-week", "No plan is published for this week.", "Plan and publish the week, then report again.");
        LineEvent seen = SealEvent();
        AgencyRoster told = agency.Roster with { Events = [.. agency.Roster.Events, seen] };
        Outcome<SealOffer> offer = SealOffer.Of(told, agency.Files.After(agency.Roster, told), week, report, screen.Wording, agency.Now, agency);
        if (!offer.Succeeded) return offer.Refusal!;
        db.LineEvents.Add(seen);
        var result = new ReportResult { ReportId = id, Screen = screen, Offer = offer.Value.Offer };
        await FileAsync(result, ReportOutcome.Offered, cancel);
        return result;
    }

    /// <summary>Works the offer out again on the week as it stands; only the very answer that was shown is applied.</summary>
    public async Task<Outcome<AppliedAnswer>> ApplyAsync(
        FiledReport filed, OfferedAnswers offer, AnswerInWords chosen, PlannedWeek? week, string reason, bool keepLater, CancellationToken cancel)
    {
        var stale = new Refusal("stale-week", "The week changed since these answers were found.", "Report the problem again to see answers that fit the week as it is.");
        if (week is null) return stale;
        Outcome<SealOffer> again = SealOffer.Of(agency.Roster, agency.Files, week, report, filed.Result!.Screen.Wording, filed.Result.AnsweredAt ?? filed.FiledAt, agency);
        if (!again.Succeeded) return stale;
        AnswerInWords? same = again.Value.Offer.Answers.FirstOrDefault(a => a.Key == chosen.Key);
        if (same is null || same.Title != chosen.Title || !same.Moves.SequenceEqual(chosen.Moves) || !same.Replaces.SequenceEqual(chosen.Replaces))
            return stale;
        if (keepLater)
        {
            if (reason.Length == 0) return KeepBoth.WithoutReason;
            again = SealOffer.Of(agency.Roster, agency.Files, week, report, filed.Result.Screen.Wording, filed.Result.AnsweredAt ?? filed.FiledAt, agency, keepLater: true);
            same = again.Value.Offer.Answers.First(a => a.Key == chosen.Key);
            if (KeepBoth.Refuse(again.Value.Weeks[chosen.Key], week, agency) is { } refusal) return refusal;
        }

        string why = reason.Length > 0 ? reason : $"Answer {chosen.Key} of report {id}";
        Outcome<PlannedWeek> published = await WeekStore.PublishAsync(db, actor, again.Value.Weeks[chosen.Key], why, realNow, cancel);
        if (!published.Succeeded) return published.Refusal!;
        ImmutableArray<PersonToTell> people = [.. OnTheRoad.Held(same.ToTell, published.Value, agency)];
        AddToTell(people);
        await UseAsNeededVisitAsync(cancel);
        EntityEntry<FiledReport> kept = db.Entry(filed);
        kept.Property(r => r.Outcome).CurrentValue = ReportOutcome.Applied;
        kept.Property(r => r.AppliedAnswer).CurrentValue = chosen.Key;
        kept.Property(r => r.Reason).CurrentValue = reason;
        await AuditTrail.AppendAsync(db, actor, "apply-answer", $"report {id}", $"answer {chosen.Key} of {offer.Answers.Length}{(keepLater ? ", the later visit kept" : "")}", realNow, cancel);
        await db.SaveChangesAsync(cancel);
        return new AppliedAnswer(published.Value, people);
    }

    private string Practitioner() =>
        agency.Roster.Patients.First(p => p.Id == report.Patient).Practitioner is { Length: > 0 } name ? name : "the practitioner";

    private LineEvent SealEvent() => new()
    {
        Id = new EventId($"{id}-seal"),
        Patient = report.Patient,
        Line = report.Line,
        Kind = LineEventKind.SealReported,
        Performed = CareMoment.Exactly(report.SeenAt, agency.Files[report.Patient].Zone),
        RecordedAt = realNow,
        Performer = PerformerKind.Caregiver,
        PerformerName = report.Caller,
        RecordedBy = actor.Name,
        Certainty = Certainty.CaregiverByPhone,
        Seal = report.Finding,
        Note = report.InTheirWords,
    };

    private async Task FileAsync(ReportResult result, ReportOutcome outcome, CancellationToken cancel)
    {
        db.Reports.Add(new FiledReport
        {
            Id = id,
            Patient = report.Patient,
            Line = report.Line,
            FiledAt = agency.Now,
            FiledBy = actor.Name,
            Report = report,
            Outcome = outcome,
            Result = result,
        });
        await AuditTrail.AppendAsync(db, actor, "report-problem", $"report {id}", outcome.ToString(), realNow, cancel);
        await db.SaveChangesAsync(cancel);
    }

    private void AddToTell(ImmutableArray<PersonToTell> people)
    {
        for (int i = 0; i < people.Length; i++)
            db.ToTell.Add(new ToTell { Id = $"{id}-{i + 1}", Report = id, Week = agency.ThisWeek, Person = people[i] });
    }

    /// <summary>An unplanned visit uses one of the as-needed visits; when none is left the visit goes ahead and the order is asked for.</summary>
    private async Task UseAsNeededVisitAsync(CancellationToken cancel)
    {
        CareOrder? order = await db.Orders
            .FirstOrDefaultAsync(o => o.Patient == report.Patient && o.Kind == OrderKind.VisitFrequency && o.AsNeededVisits > o.AsNeededUsed, cancel);
        if (order is not null)
        {
            db.Entry(order).Property(o => o.AsNeededUsed).CurrentValue = order.AsNeededUsed + 1;
            return;
        }

        db.OrderRequests.Add(new OrderRequest(
            $"{id}-order", report.Patient, report.Line, agency.Today,
            $"The visit after report {id} was for safety and went ahead without an as-needed visit left in the orders. Ask {Practitioner()} for the order.",
            actor.Name));
    }
}
