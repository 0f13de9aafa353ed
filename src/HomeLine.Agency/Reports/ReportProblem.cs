using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Reports;

/// <summary>A problem on the phone: screen first, then either a stop with what to do, or answers to choose from.</summary>
public sealed class ReportProblem(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Stores the report and answers it. Needs <see cref="AgencyAction.ReportProblem"/>. A screen that stopped never reaches the planner.</summary>
    public async Task<Outcome<ReportResult>> ReportAsync(Actor actor, ProblemReport report, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        if (ReportFaults.Of(report, agency) is { } fault) return fault;
        ScreenOutcome screen = SymptomScreen.Evaluate(report.Answers, ScreenContext.Of(agency.Files[report.Patient], agency.Files.Policy, agency.Today));
        string id = $"R{await db.Reports.CountAsync(cancel) + 1}";
        PlannedWeek? week = (await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week;
        var desk = new ReportDesk(db, actor, agency, report, id, clock.RealNow());
        Outcome<ReportResult> result = screen switch
        {
            { Stopped: not null } => await desk.StopAsync(screen, week, cancel),
            { MaySchedule: false } => new Refusal(
                "screen-incomplete", $"The symptom screen is not complete: {screen.Next?.Text}", "Ask the remaining questions first."),
            _ => await desk.OfferAsync(screen, week, cancel),
        };
        if (result.Succeeded) await turn.CommitAsync(cancel);
        return result;
    }

    /// <summary>Applies one offered answer with the reason for choosing it. Needs <see cref="AgencyAction.ApplyAnswer"/>. A week that changed meanwhile is refused with <c>stale-week</c>.</summary>
    public async Task<Outcome<AppliedAnswer>> ApplyAsync(Actor actor, string reportId, string answerKey, string reason, CancellationToken cancel, bool keepLater = false)
    {
        if (actor.Refuse(AgencyAction.ApplyAnswer) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadInTurnAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        FiledReport? filed = await db.Reports.SingleOrDefaultAsync(r => r.Id == reportId, cancel);
        if (filed?.Result?.Offer is not { } offer) return new Refusal("no-offer", "This report has no answers to apply.", "Report the problem again.");
        if (filed.Outcome == ReportOutcome.Applied)
            return new Refusal("already-applied", $"Answer {filed.AppliedAnswer} was already applied.", "Look at the week.");
        if (await LookAgainDesk.StoppedSinceAsync(db, filed.Patient, filed.FiledAt, cancel) is { } stopped) return stopped;
        AnswerInWords? chosen = offer.Answers.FirstOrDefault(a => a.Key == answerKey);
        if (chosen is null) return new Refusal("no-offer", "There is no such answer.", "Choose one of the answers shown.");
        if (chosen != offer.Answers[0] && string.IsNullOrWhiteSpace(reason))
            return new Refusal("reason-missing", "Another answer ranks higher.", "Say in a few words why you choose this one.");
        PlannedWeek? week = (await WeekStore.PublishedAsync(db, AgencyAtHand.WeekOf(chosen.Visit.Day), cancel))?.Week;
        var desk = new ReportDesk(db, actor, read.Value, filed.Report, filed.Id, clock.RealNow());
        Outcome<AppliedAnswer> applied = await desk.ApplyAsync(filed, offer, chosen, week, reason.Trim(), keepLater, cancel);
        if (applied.Succeeded) await turn.CommitAsync(cancel);
        return applied;
    }

    /// <summary>
    /// Works the answers to a report that waits out anew, on the week as it stands. Needs <see cref="AgencyAction.ReportProblem"/>. Refused with
    /// <c>stopped-since</c> when a red flag stopped the patient since the report.
    /// </summary>
    public Task<Outcome<FiledReport>> LookAgainAsync(Actor actor, string reportId, CancellationToken cancel) =>
        AgencyWork.DoAsync<FiledReport>(databases, clock, actor, AgencyAction.ReportProblem,
            async (db, agency) => await new LookAgainDesk(db, actor, agency, clock.RealNow()).ReportAsync(reportId, cancel), cancel);

    /// <summary>One report as kept. Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public async Task<Outcome<FiledReport>> FindAsync(Actor actor, string reportId, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        FiledReport? filed = await db.Reports.AsNoTracking().SingleOrDefaultAsync(r => r.Id == reportId, cancel);
        return filed is null ? new Refusal("report-not-found", "There is no such report.", "Look at today again.") : filed;
    }
}

/// <summary>What was done: the new published week and who must now be told.</summary>
public sealed record AppliedAnswer(PlannedWeek Week, ImmutableArray<PersonToTell> ToTell);

/// <summary>What is wrong with a report before anything is asked of the clocks.</summary>
internal static class ReportFaults
{
    public static Refusal? Of(ProblemReport report, AgencyAtHand agency)
    {
        if (agency.Roster.Patients.All(p => p.Id != report.Patient))
            return new Refusal("patient-unknown", "There is no such patient.", "Choose the patient again.");
        if (agency.Roster.Lines.All(l => l.Id != report.Line || l.Patient != report.Patient))
            return new Refusal("line-unknown", "This patient has no such line.", "Ask which line the caller means.");
        if (IsOut(report.Line, agency)) return new Refusal("line-removed", "This line was taken out.", "Ask which line the caller means.");
        if (report.SeenAt > agency.Now) return new Refusal("seen-in-future", "The time it was seen lies in the future.", "Correct the time.");
        ImmutableHashSet<string> known = [.. SymptomScreen.Questions(ScreenContext.Unknown).Select(q => q.Id)];
        return report.Answers.Keys.All(known.Contains)
            ? null
            : new Refusal("answer-unknown", "An answer belongs to no question of the screen.", "Start the screen again.");
    }

    private static bool IsOut(LineId line, AgencyAtHand agency) =>
        agency.Roster.Events.Any(e => e.Line == line && e.Kind is (LineEventKind.Removed or LineEventKind.Exchanged));
}
