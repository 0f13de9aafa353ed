using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Today;

/// <summary>The call list of the whole branch: who is still to be told, what was tried, and the tick when it is done.</summary>
public sealed class KeepOutbox(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Ticks somebody as told. Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public Task<Outcome<ToTell>> TellAsync(Actor actor, string entryId, CancellationToken cancel) => ChangeAsync(actor, entryId, "told", (db, agency, entry) =>
    {
        db.Entry(entry).Property(t => t.DoneAt).CurrentValue = clock.RealNow();
        db.Entry(entry).Property(t => t.DoneBy).CurrentValue = actor.Name;
        return null;
    }, cancel);

    /// <summary>Writes down a try that did not reach them; they stay on the list. Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public Task<Outcome<ToTell>> TriedAsync(Actor actor, string entryId, string what, CancellationToken cancel) => ChangeAsync(actor, entryId, "not-reached", (db, agency, entry) =>
    {
        if (string.IsNullOrWhiteSpace(what)) return new Refusal("try-empty", "It is not said what came of the call.", "Write it in a few words, for example: no answer.");
        ImmutableArray<ToldTry> tries = entry.Tries.IsDefault ? [] : entry.Tries;
        db.Entry(entry).Property(t => t.Tries).CurrentValue = tries.Add(new ToldTry(agency.Now, actor.Name, what.Trim()));
        return null;
    }, cancel);

    private Task<Outcome<ToTell>> ChangeAsync(
        Actor actor, string entryId, string action, Func<AgencyDb, AgencyAtHand, ToTell, Refusal?> change, CancellationToken cancel) =>
        AgencyWork.DoPreparedAsync<object, ToTell>(databases, clock, actor, AgencyAction.ReportProblem, (_, _) => Task.FromResult(new object()), async (db, agency, _) =>
        {
            ToTell? entry = await db.ToTell.SingleOrDefaultAsync(t => t.Id == entryId, cancel);
            if (entry is null) return new Refusal("no-such-person", "This person is not on the list.", "Look at the list again.");
            if (entry.DoneAt is not null) return new Refusal("told-already", $"{entry.DoneBy} has told them.", "Nothing to do.");
            if (change(db, agency, entry) is { } refused) return refused;
            await AuditTrail.AppendAsync(db, actor, action, $"told {entryId}", entry.Person.Who, clock.RealNow(), cancel);
            return entry;
        }, cancel);
}
