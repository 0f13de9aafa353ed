using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Planning.Plans;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Makes a draft the published week: what nurses and families are told.</summary>
public sealed class PublishWeek(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    private const int LeastWords = 5;

    /// <summary>
    /// Needs <see cref="AgencyAction.PublishWeek"/>. A stale version is refused with <c>stale-week</c>. An unmet critical need is
    /// refused with <c>critical-unmet</c> unless <paramref name="acknowledgement"/> holds a reason and a backup plan in words. A draft that breaks a rule
    /// of the plan, as one can after a leave or after steps were brought over, is refused with <c>draft-breaks-rule</c>, and a week with a day on which nobody
    /// is on call with <c>nobody-on-call</c> (policy <c>oncall.required</c>); no words lift those. The draft stays.
    /// </summary>
    /// <param name="actor">Who publishes.</param>
    /// <param name="firstDay">The week.</param>
    /// <param name="seenVersion">The published version the person has seen, 0 for none.</param>
    /// <param name="acknowledgement">Why it is published although a critical need is unmet, and what covers it.</param>
    /// <param name="cancel">Cancels the work.</param>
    public async Task<Outcome<PlannedWeek>> PublishAsync(
        Actor actor, LocalDate firstDay, int seenVersion, string? acknowledgement, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PublishWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        StoredWeek? draft = await WeekStore.DraftAsync(db, firstDay, cancel);
        if (draft is null) return new Refusal("no-week", "There is no draft for this week.", "Plan the week first.");
        AgencyAtHand agency = read.Value;
        if (BrokenRules.Of(await weeks.OfAsync(db, agency, firstDay, cancel)) is { } broken) return broken;
        if (OnCallDays.Refuse(agency, firstDay) is { } nobody) return nobody;
        StoredWeek? before = await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel);
        if (CriticalUnmet(agency, before?.Week, draft.Week) && WordsIn(acknowledgement) < LeastWords)
        {
            return new Refusal(
                "critical-unmet",
                "A critical need is unmet in this plan.",
                "Give the reason and the backup plan in words, or change the plan.");
        }

        PlannedWeek told = draft.Week with { Version = seenVersion, Visits = [.. draft.Week.Visits.Select(Told)] };
        await using var turn = await db.BeginWorkAsync(cancel);
        Outcome<PlannedWeek> done = await WeekStore.PublishAsync(db, actor, told, acknowledgement ?? "", clock.RealNow(), cancel);
        if (!done.Succeeded) return done;
        await EditStore.AddAsync(db, Mark(actor, draft, done.Value, clock.RealNow()), cancel);
        await db.SaveChangesAsync(cancel);
        await turn.CommitAsync(cancel);
        weeks.Tell(new WeekChanged(firstDay, 0, actor.Name, $"The week is published as version {done.Value.Version}"));
        return done;
    }

    /// <summary>What to know before publishing, and what does not stop it: days of the draft that keep less free than the reserve. Needs <see cref="AgencyAction.PublishWeek"/>.</summary>
    public async Task<Outcome<ImmutableArray<DayReserve>>> BelowReserveAsync(Actor actor, LocalDate firstDay, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PublishWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        if (await WeekStore.DraftAsync(db, firstDay, cancel) is not { } draft) return ImmutableArray<DayReserve>.Empty;
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        return ImmutableArray.CreateRange(DayReserve.Of(agency.Roster, agency.Files.Policy, draft.Week, RoadTravel.Of(agency.Roster), now).Where(d => !d.IsKept));
    }

    /// <summary>Nothing before it can be taken back in the next draft.</summary>
    private static WeekEdit Mark(Actor actor, StoredWeek draft, PlannedWeek published, Instant at) => new()
    {
        FirstDay = published.FirstDay,
        Number = 0,
        Base = draft.Week.Version,
        Revision = draft.Revision,
        Kind = EditKind.Published,
        Words = $"Published as version {published.Version}",
        At = at,
        By = actor.Name,
    };

    private static WeekVisit Told(WeekVisit visit) => visit.Promise == PromiseState.Draft
        ? visit with { Promise = PromiseState.Told, ToldFrom = visit.Start }
        : visit;

    private static bool CriticalUnmet(AgencyAtHand agency, PlannedWeek? before, PlannedWeek week)
    {
        if (week.Unmet.IsEmpty) return false;
        WeekDemand demand = WeekDemand.Ahead(agency.Roster, before is null ? [] : [before], week.FirstDay, agency.Now);
        return demand.Needs.Values.Any(n =>
            n.Task.Critical && week.Unmet.Any(u => u.Patient == n.Patient && u.Label == n.Task.Label));
    }

    private static int WordsIn(string? text) =>
        text?.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length ?? 0;
}
