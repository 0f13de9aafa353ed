using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Mending;

/// <summary>Something broke the day: it is kept with what follows from it, and at most three answers are offered. One press applies one of them.</summary>
public sealed class MendTrouble(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>
    /// Takes a trouble down and answers it. Needs <see cref="AgencyAction.ReportProblem"/>, an admission also <see cref="AgencyAction.HoldPatient"/>. A screen that
    /// stopped never reaches the planner. What is a fact (a nurse is out, a patient in hospital, a visit missed) is kept at once; what is a choice is only offered.
    /// </summary>
    public async Task<Outcome<TroubleResult>> ReportAsync(Actor actor, TroubleEntry entry, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        if (entry is InHospital && actor.Refuse(AgencyAction.HoldPatient) is { } noHold) return noHold;
        Outcome<TroubleResult> told = await AgencyWork.DoPreparedAsync<Ready, TroubleResult>(databases, clock, actor, AgencyAction.ReportProblem,
            async (db, agency) =>
            {
                string id = await TroubleDesk.NextIdAsync(db, cancel);
                PlannedWeek? week = await WeekAsync(db, entry, agency, cancel);
                return new Ready(id, week, entry is InHospital ? (Outcome<PreparedTrouble>?)null : PreparedTrouble.Of(entry, agency, week, id, cancel));
            },
            async (db, agency, ready) =>
            {
                var desk = new TroubleDesk(db, actor, agency, clock.RealNow());
                string id = ready?.Id ?? await TroubleDesk.NextIdAsync(db, cancel);
                if (entry is InHospital admitted) return await desk.HospitalAsync(admitted, id, cancel);
                PlannedWeek? week = ready is null ? await WeekAsync(db, entry, agency, cancel) : ready.Week;
                Outcome<PreparedTrouble> prepared = ready?.Prepared ?? PreparedTrouble.Of(entry, agency, week, id, cancel);
                return prepared.Succeeded ? await desk.KeepAsync(entry, prepared.Value, week, id, cancel) : prepared.Refusal!;
            }, cancel);
        // Who works on the week by hand sees it at once.
        if (told.Succeeded && entry is RoadShut) weeks.Tell(new WeekChanged(told.Value.Filed.Week, -1, actor.Name, told.Value.Filed.Title));
        return told;
    }

    /// <summary>
    /// Applies one answer with the reason for choosing it: the next published version, and a list of people to tell. Needs <see cref="AgencyAction.ApplyAnswer"/>.
    /// A week that changed since is refused with <c>stale-week</c> and what changed; what has come too close to move with <c>frozen-since</c>.
    /// </summary>
    public Task<Outcome<AppliedTrouble>> ApplyAsync(Actor actor, string id, string key, string reason, CancellationToken cancel) =>
        AgencyWork.DoAsync<AppliedTrouble>(databases, clock, actor, AgencyAction.ApplyAnswer,
            async (db, agency) => await new ApplyDesk(db, actor, agency, clock.RealNow()).ApplyAsync(id, key, reason.Trim(), cancel), cancel);

    /// <summary>Closes a trouble without an answer, with the reason. Needs <see cref="AgencyAction.ReportProblem"/>. A call-out that was a mistake is taken back with it.</summary>
    public Task<Outcome<FiledTrouble>> CloseAsync(Actor actor, string id, string reason, CancellationToken cancel) =>
        AgencyWork.DoAsync<FiledTrouble>(databases, clock, actor, AgencyAction.ReportProblem,
            async (db, agency) => await new ApplyDesk(db, actor, agency, clock.RealNow()).CloseAsync(id, reason.Trim(), cancel), cancel);

    /// <summary>
    /// Works the answers to an open trouble out anew, on the week as it stands now. What was kept when it was told is not kept a second time. Needs
    /// <see cref="AgencyAction.ReportProblem"/>. A call is refused with <c>stopped-since</c> when a red flag stopped the patient since.
    /// </summary>
    public Task<Outcome<FiledTrouble>> LookAgainAsync(Actor actor, string id, CancellationToken cancel) =>
        AgencyWork.DoAsync<FiledTrouble>(databases, clock, actor, AgencyAction.ReportProblem,
            async (db, agency) => await new LookAgainDesk(db, actor, agency, clock.RealNow()).TroubleAsync(id, cancel), cancel);

    /// <summary>One trouble as kept. Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public async Task<Outcome<FiledTrouble>> FindAsync(Actor actor, string id, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        FiledTrouble? filed = await db.Troubles.AsNoTracking().SingleOrDefaultAsync(t => t.Id == id, cancel);
        return filed is null ? new Refusal("trouble-not-found", "There is no such trouble.", "Look at today again.") : filed;
    }

    private static async Task<PlannedWeek?> WeekAsync(AgencyDb db, TroubleEntry entry, AgencyAtHand agency, CancellationToken cancel) =>
        (await WeekStore.PublishedAsync(db, TroubleDesk.WeekOf(entry, agency.Today), cancel))?.Week;

    private sealed record Ready(string Id, PlannedWeek? Week, Outcome<PreparedTrouble>? Prepared);
}
