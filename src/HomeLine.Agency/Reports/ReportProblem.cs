using HomeLine.Agency.Access;
using HomeLine.Agency.WeekPlanning;

namespace HomeLine.Agency.Reports;

/// <summary>A problem on the phone: screen first, then either a stop with what to do, or answers to choose from.</summary>
public sealed class ReportProblem
{
    /// <summary>Stores the report and answers it. Needs <see cref="AgencyAction.ReportProblem"/>. A screen that stopped never reaches the planner.</summary>
    public Task<Outcome<ReportResult>> ReportAsync(Actor actor, ProblemReport report, CancellationToken cancel) =>
        throw new NotImplementedException();

    /// <summary>Applies one offered answer with the reason for choosing it. Needs <see cref="AgencyAction.ApplyAnswer"/>. A week that changed meanwhile is refused with <c>stale-week</c>.</summary>
    public Task<Outcome<AppliedAnswer>> ApplyAsync(Actor actor, string reportId, string answerKey, string reason, CancellationToken cancel) =>
        throw new NotImplementedException();
}

/// <summary>What was done: the new published week and who must now be told.</summary>
public sealed record AppliedAnswer(PlannedWeek Week, System.Collections.Immutable.ImmutableArray<PersonToTell> ToTell);
