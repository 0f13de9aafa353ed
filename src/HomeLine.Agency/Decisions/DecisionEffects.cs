using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>What a decision changes: entries of the ledger, the order, the exception, the visits. All in the caller's transaction.</summary>
internal sealed class DecisionEffects(AgencyDb db, Actor actor, DecisionFacts facts, OpenDecision question, DecisionMade made, string id, Instant realNow)
{
    private readonly Patient patient = facts.Agency.Roster.Patients.First(p => p.Id == question.Patient);

    /// <summary>Carries the decision out.</summary>
    /// <returns>Who must be told.</returns>
    public async Task<Outcome<ImmutableArray<PersonToTell>>> ApplyAsync(CancellationToken cancel)
    {
        switch (made.Choice)
        {
            case DecisionChoice.Settle or DecisionChoice.AcceptUntil or DecisionChoice.KeepLocked:
                return ImmutableArray<PersonToTell>.Empty;
            case DecisionChoice.ConfirmOrder:
                return await ConfirmOrderAsync(cancel);
            case DecisionChoice.ReleaseLine:
                Enter(LineEventKind.UseReleased);
                return Told.LineReleased(patient, question.Line, facts.Agency);
            case DecisionChoice.LockLine:
                Enter(LineEventKind.UseLocked);
                return Told.LineLocked(patient, question.Line, facts.Agency);
            case DecisionChoice.ConfirmTip:
                Enter(LineEventKind.TipConfirmed);
                return ImmutableArray<PersonToTell>.Empty;
            case DecisionChoice.ClearLumen:
                Enter(LineEventKind.LumenCleared, e => e with { LumensUsed = [question.About.Split(' ')[^1]] });
                return ImmutableArray<PersonToTell>.Empty;
            case DecisionChoice.VerifyCare:
                Enter(LineEventKind.SiteChecked);
                return ImmutableArray<PersonToTell>.Empty;
            case DecisionChoice.PutOnFile:
                return await PutOnFileAsync(cancel);
            case DecisionChoice.RenewException:
                return await RenewExceptionAsync(cancel);
            case DecisionChoice.ReleaseVisits or DecisionChoice.CancelVisits or DecisionChoice.ToHospital:
                return await DecideVisitsAsync(cancel);
            default:
                throw new ArgumentOutOfRangeException(nameof(cancel), made.Choice, "Unknown choice");
        }
    }

    private async Task<Outcome<ImmutableArray<PersonToTell>>> ConfirmOrderAsync(CancellationToken cancel)
    {
        string orderId = question.About[..question.About.LastIndexOf(' ')];
        CareOrder order = await db.Orders.SingleAsync(o => o.Id == orderId, cancel);
        db.Entry(order).Property(o => o.Confirmed).CurrentValue = true;
        return ImmutableArray<PersonToTell>.Empty;
    }

    private async Task<Outcome<ImmutableArray<PersonToTell>>> RenewExceptionAsync(CancellationToken cancel)
    {
        string rule = question.About[..question.About.LastIndexOf(' ')];
        CareException exception = await db.Exceptions.SingleAsync(x => x.Patient == question.Patient && x.RuleId == rule, cancel);
        var entry = db.Entry(exception);
        entry.Property(x => x.Through).CurrentValue = made.Until ?? DecisionFaults.LongestEnd(facts);
        entry.Property(x => x.Owner).CurrentValue = made.LicensedName.Trim();
        entry.Property(x => x.Reason).CurrentValue = made.Reason.Trim();
        await AuditTrail.AppendAsync(db, actor, "except", $"{question.Patient} {rule}", $"{made.LicensedName.Trim()}: {made.Reason.Trim()}", realNow, cancel);
        return ImmutableArray<PersonToTell>.Empty;
    }

    /// <summary>Named in the trail, so that a roster file that does not know of it takes it back no more than any other word put down here.</summary>
    private async Task<Outcome<ImmutableArray<PersonToTell>>> PutOnFileAsync(CancellationToken cancel)
    {
        RiskFactors risk = SkinHarm.RiskOf(question.Code);
        Patient stored = await db.Patients.SingleAsync(p => p.Id == question.Patient, cancel);
        db.Entry(stored).Property(p => p.Risks).CurrentValue = stored.Risks | risk;
        await AuditTrail.AppendAsync(db, actor, "put-on-file", $"{question.Patient} {risk}", $"{made.LicensedName.Trim()}: {made.Reason.Trim()}", realNow, cancel);
        return ImmutableArray<PersonToTell>.Empty;
    }

    private async Task<Outcome<ImmutableArray<PersonToTell>>> DecideVisitsAsync(CancellationToken cancel)
    {
        if (made.Choice == DecisionChoice.ToHospital) Enter(LineEventKind.AdmittedToHospital, e => e with { Line = null });
        if (question.Code == AppDecisionCodes.ScreenStopped || made.Choice == DecisionChoice.ToHospital) await CloseCallsAsync(cancel);
        var visits = HeldVisits.Of(facts, question, made.Choice);
        foreach (var week in visits.WeeksAfter)
        {
            Outcome<WeekPlanning.PlannedWeek> published = await WeekStore.PublishAsync(db, actor, week, $"Decision {id}: {made.Reason.Trim()}", realNow, cancel);
            if (!published.Succeeded) return published.Refusal!;
        }

        return Told.OfVisits(visits.Decided, patient, made, facts.Agency);
    }

    /// <summary>The calls that stopped are answered; a patient in hospital has none that waits.</summary>
    private async Task CloseCallsAsync(CancellationToken cancel)
    {
        foreach (FiledReport report in await db.Reports.Where(r => r.Patient == question.Patient && r.Outcome == ReportOutcome.Stopped).ToListAsync(cancel))
        {
            if (made.Choice != DecisionChoice.ToHospital && report.Id != question.About) continue;
            db.Entry(report).Property(r => r.Outcome).CurrentValue = ReportOutcome.Decided;
            db.Entry(report).Property(r => r.Reason).CurrentValue = $"{made.LicensedName.Trim()}: {made.Reason.Trim()}";
        }
    }

    private void Enter(LineEventKind kind, Func<LineEvent, LineEvent>? but = null)
    {
        var entry = new LineEvent
        {
            Id = new EventId(id),
            Patient = question.Patient,
            Line = question.Line,
            Kind = kind,
            Performed = CareMoment.Exactly(facts.Agency.Now, patient.Zone),
            RecordedAt = facts.Agency.Now,
            Performer = PerformerKind.Nurse,
            PerformerName = made.LicensedName.Trim(),
            RecordedBy = actor.Name,
            Note = made.Reason.Trim(),
        };
        db.LineEvents.Add(but is null ? entry : but(entry));
    }
}
