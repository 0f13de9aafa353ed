using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>What was done with a trouble: the new published week when it changed, and who must now be told.</summary>
public sealed record AppliedTrouble(FiledTrouble Trouble, PlannedWeek? Week, ImmutableArray<PersonToTell> ToTell);

/// <summary>Choosing an answer, or closing without one, inside the work under way.</summary>
internal sealed class ApplyDesk(AgencyDb db, Actor actor, AgencyAtHand agency, Instant realNow)
{
    public async Task<Outcome<AppliedTrouble>> ApplyAsync(string id, string key, string reason, CancellationToken cancel)
    {
        FiledTrouble? filed = await db.Troubles.SingleOrDefaultAsync(t => t.Id == id, cancel);
        if (filed?.Offer is not { } offer) return new Refusal("no-offer", "This trouble has no answers to apply.", "Report it again.");
        if (filed.State != TroubleState.Open) return new Refusal("already-ended", $"This trouble is ended: {filed.Reason}", "Look at the week.");
        if (await LookAgainDesk.StoppedSinceAsync(db, filed, cancel) is { } stopped) return stopped;
        MendAnswer? chosen = offer.Answers.FirstOrDefault(a => a.Key == key);
        if (chosen is null) return new Refusal("no-offer", "There is no such answer.", "Choose one of the answers shown.");
        if (reason.Length == 0 && chosen.Decider.Length > 0)
            return new Refusal("decider-missing", $"Somebody has to agree first: {chosen.Decider}", "Write who agreed.");
        if (reason.Length == 0 && chosen != offer.Answers[0])
            return new Refusal("reason-missing", "Another answer ranks higher.", "Say in a few words why you choose this one.");
        PlannedWeek? after = null;
        if (chosen.ChangesWeek)
        {
            Outcome<PlannedWeek> published = await PublishAsync(filed, chosen, reason, cancel);
            if (!published.Succeeded) return published.Refusal!;
            after = published.Value;
        }

        if (chosen.Holds is not null && after is null && (await WeekStore.PublishedAsync(db, filed.Week, cancel))?.Week.Version != filed.WeekVersion) return await StaleAsync(filed, cancel);
        if (filed.Entry is CanWeTakeIt referral) db.Entry(filed).Property(t => t.Entry).CurrentValue = referral with { KeptAs = await KeepReferralAsync(referral.Referral, chosen, reason, cancel) };
        ImmutableArray<PersonToTell> people = [.. OnTheRoad.Held(chosen.ToTell, after ?? await ThisWeekAsync(cancel), agency)];
        await AddToTellAsync(filed, people, cancel);
        End(filed, TroubleState.Applied, reason.Length > 0 ? reason : "Ranked first.", key);
        await AuditTrail.AppendAsync(db, actor, "apply-answer", $"trouble {id}", $"answer {key} of {offer.Answers.Length}: {chosen.Title}", realNow, cancel);
        return new AppliedTrouble(filed, after, people);
    }

    public async Task<Outcome<FiledTrouble>> CloseAsync(string id, string reason, CancellationToken cancel)
    {
        FiledTrouble? filed = await db.Troubles.SingleOrDefaultAsync(t => t.Id == id, cancel);
        if (filed is null) return new Refusal("trouble-not-found", "There is no such trouble.", "Look at today again.");
        if (filed.State is TroubleState.Applied or TroubleState.Closed) return new Refusal("already-ended", $"This trouble is ended: {filed.Reason}", "Look at the week.");
        if (filed.State == TroubleState.Stopped)
            return new Refusal("stopped-is-decided", "The symptom screen stopped this call.", "A licensed person decides it under Decisions.");
        if (reason.Length == 0) return new Refusal("close-reason-missing", "It is not said why it is closed.", "Write it in a few words.");
        if (filed.Entry is NurseIsOut absent) await TakeBackAsync(absent, cancel);
        End(filed, TroubleState.Closed, reason, null);
        await AuditTrail.AppendAsync(db, actor, "close-trouble", $"trouble {id}", reason, realNow, cancel);
        return filed;
    }

    private async Task<Outcome<PlannedWeek>> PublishAsync(FiledTrouble filed, MendAnswer chosen, string reason, CancellationToken cancel)
    {
        StoredWeek? stored = await WeekStore.PublishedAsync(db, filed.Week, cancel);
        if (stored is null || stored.Week.Version != filed.WeekVersion) return await StaleAsync(filed, cancel);
        if (TooClose(filed, chosen) is { } close) return close;
        string why = $"{filed.Id}, answer {chosen.Key}: {filed.Title}{(reason.Length > 0 ? $". {reason}" : "")}";
        PlannedWeek after = AppliedWeek.Of(stored.Week, chosen.Changes);
        after = after with { Unmet = [.. after.Unmet.Where(u => !IsBack(u, filed.Entry, chosen)), .. LeftOver(chosen)] };
        return await WeekStore.PublishAsync(db, actor, after, why, realNow, cancel);
    }

    /// <summary>Says what changed since: who published which version and why.</summary>
    private async Task<Refusal> StaleAsync(FiledTrouble filed, CancellationToken cancel)
    {
        IEnumerable<string> since = (await WeekStore.HistoryAsync(db, filed.Week, cancel))
            .Where(v => v.Version > filed.WeekVersion)
            .Select(v => $"version {v.Version} by {v.PublishedBy}{(v.Reason.Length > 0 ? $" ({v.Reason})" : "")}");
        return new Refusal("stale-week", $"The week changed since these answers were found: {string.Join("; ", since)}.", "Look for answers again: they will fit the week as it is.");
    }

    /// <summary>What starts within the hour or has begun is not moved; the nurse who is out or late is the exception, it is she who cannot.</summary>
    private Refusal? TooClose(FiledTrouble filed, MendAnswer chosen)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        LocalDateTime frozen = now.PlusMinutes((int)agency.Files.Policy.ValueOf("frozen.ahead", agency.Today));
        foreach (VisitChange change in chosen.Changes)
        {
            bool moves = change is { Before: { } b, After: { } a } && (b.Nurse != a.Nurse || b.Start != a.Start || b.Day != a.Day);
            bool hers = filed.Entry switch
            {
                NurseIsOut o => change.Before?.Nurse == o.Nurse || change.Before?.Second == o.Nurse,
                RunsLate l => change.Before?.Nurse == l.Nurse || change.Before?.Second == l.Nurse,
                AtTheDoor d => change.Before?.Id == d.Visit,
                _ => false,
            };
            bool close = moves && !hers && change.Before!.Day.At(change.Before.Start) < frozen;
            bool past = change.After is { } then && (moves || change.Before is null) && then.Day.At(then.Start) < now;
            if (close || past)
                return new Refusal("frozen-since", $"Too much time has passed: {change.Words}", "Look for answers again: they will fit the time that is left.");
        }

        return null;
    }

    /// <summary>Nobody could come because of the closure, and now somebody does.</summary>
    private static bool IsBack(UnmetNeed unmet, TroubleEntry entry, MendAnswer chosen) => entry is RoadOpenAgain
        && unmet.Reasons.Any(r => r.Code == "nurse-out") && chosen.Changes.Any(c => c.Before is null && c.After!.Patient == unmet.Patient);

    private static IEnumerable<UnmetNeed> LeftOver(MendAnswer chosen) => chosen.Changes
        .Where(c => c.After is null && c.Before is not null)
        .Zip(chosen.Unmet, (change, left) => new UnmetNeed(change.Before!.Patient, left.Care, [new Planning.Plans.PlanningReason("nurse-out", left.Because, "A licensed person decides what happens until then.")], []) { LastDay = change.Before.Day });

    /// <returns>The number it is kept under.</returns>
    private async Task<string> KeepReferralAsync(ReferralFacts facts, MendAnswer chosen, string reason, CancellationToken cancel)
    {
        int number = await db.Referrals.CountAsync(cancel) + 1;
        string id = $"F{number}";
        db.Referrals.Add(new Referral
        {
            Id = id,
            Name = facts.Name.Trim(),
            ReferredAt = agency.Now,
            EnteredAt = agency.Now,
            HomeAt = facts.HomeAt?.InZoneLeniently(agency.Roster.Profile.Zone).ToInstant(),
            Note = $"{chosen.Title}. {reason} {facts.Note}".Trim(),
            EnteredBy = actor.Name,
        });
        return id;
    }

    private async Task<PlannedWeek?> ThisWeekAsync(CancellationToken cancel) => (await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week;

    private async Task AddToTellAsync(FiledTrouble filed, ImmutableArray<PersonToTell> people, CancellationToken cancel)
    {
        string prefix = $"{filed.Id}-";
        int already = await db.ToTell.CountAsync(t => t.Report == null && t.Id.StartsWith(prefix), cancel);
        new TroubleDesk(db, actor, agency, realNow).AddToTell(filed.Id, filed.Week, people, already);
    }

    private async Task TakeBackAsync(NurseIsOut entry, CancellationToken cancel)
    {
        NurseFile file = await db.Nurses.SingleAsync(n => n.Id == entry.Nurse, cancel);
        Leave? leave = file.Leaves.LastOrDefault(l => l.From == entry.From.Date && l.Through == entry.Through);
        if (leave is not null) db.Entry(file).Property(n => n.Leaves).CurrentValue = file.Leaves.Remove(leave);
    }

    private void End(FiledTrouble filed, TroubleState state, string reason, string? key)
    {
        EntityEntry<FiledTrouble> kept = db.Entry(filed);
        kept.Property(t => t.State).CurrentValue = state;
        kept.Property(t => t.Reason).CurrentValue = reason;
        kept.Property(t => t.AppliedAnswer).CurrentValue = key;
        kept.Property(t => t.EndedAt).CurrentValue = agency.Now;
    }
}
