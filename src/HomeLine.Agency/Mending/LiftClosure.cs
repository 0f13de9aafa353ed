using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>A road or a town is open again before its time: from then on nothing counts with the closure any more.</summary>
public sealed class LiftClosure(IDbContextFactory<AgencyDb> databases, AgencyClock clock, MendTrouble mending, WorkingWeeks weeks)
{
    /// <summary>
    /// Lifts it: who, when and why stay with it. Needs <see cref="AgencyAction.ReportProblem"/>. What was moved because of it stays moved until somebody
    /// asks with <see cref="LookAgainAsync"/>.
    /// </summary>
    public async Task<Outcome<FiledTrouble>> LiftAsync(Actor actor, string id, string why, CancellationToken cancel)
    {
        Outcome<FiledTrouble> lifted = await AgencyWork.DoAsync<FiledTrouble>(databases, clock, actor, AgencyAction.ReportProblem, async (db, agency) =>
        {
            FiledTrouble? filed = await db.Troubles.SingleOrDefaultAsync(t => t.Id == id, cancel);
            if (filed is not { Entry: RoadShut shut }) return NotAClosure;
            LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
            if (filed.State == TroubleState.Closed || shut.Ends <= now)
                return new Refusal("closure-ended", "This closure holds no more.", "Look at today again: others may still hold.");
            if (string.IsNullOrWhiteSpace(why)) return new Refusal("lift-reason-missing", "It is not said how you know that it is open.", "Write it in a few words, for example: ploughed, the police called.");
            db.Entry(filed).Property(t => t.Entry).CurrentValue = shut with { Opened = new RoadOpened(now, actor.Name, why.Trim()) };
            await AuditTrail.AppendAsync(db, actor, "lift-closure", $"trouble {id}", $"open at {DayWords.Moment(now)}, not at {DayWords.Moment(shut.To)}: {why.Trim()}", clock.RealNow(), cancel);
            // Answers that wait were found for closed roads.
            if (filed.State == TroubleState.Open) await new ApplyDesk(db, actor, agency, clock.RealNow()).CloseAsync(id, $"Open again: {why.Trim()}", cancel);
            return filed;
        }, cancel);
        if (lifted.Succeeded) weeks.Tell(new WeekChanged(lifted.Value.Week, -1, actor.Name, $"{lifted.Value.Title}: open again"));
        return lifted;
    }

    /// <summary>
    /// Looks whether visits that an answer to the closure moved could go back; the answer is offered like any other. Needs <see cref="AgencyAction.ReportProblem"/>.
    /// Refused with <c>closure-holds</c> while the closure holds, with <c>nothing-moved</c> when no answer moved anything.
    /// </summary>
    public async Task<Outcome<FiledTrouble>> LookAgainAsync(Actor actor, string id, CancellationToken cancel)
    {
        Outcome<FiledTrouble> found = await mending.FindAsync(actor, id, cancel);
        if (!found.Succeeded) return found;
        if (found.Value is not { Entry: RoadShut shut } closure) return NotAClosure;
        if (shut.Opened is null) return new Refusal("closure-holds", "It is not said that the road is open again.", "Say first that it is open, and how you know.");
        if (closure.Offer?.Answers.FirstOrDefault(a => a.Key == closure.AppliedAnswer) is not { Changes: { IsEmpty: false } moved })
            return new Refusal("nothing-moved", "No visit was moved because of it.", "Nothing has to be looked at.");
        Outcome<TroubleResult> told = await mending.ReportAsync(actor, new RoadOpenAgain(id, moved), cancel);
        return told.Succeeded ? told.Value.Filed : told.Refusal!;
    }

    private static Refusal NotAClosure { get; } = new("not-a-closure", "There is no such closure.", "Look at today again.");
}
