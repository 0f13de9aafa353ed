using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>A referral as entered.</summary>
/// <param name="Name">Who is referred.</param>
/// <param name="ReferredAt">When it came; empty when nobody wrote it down.</param>
/// <param name="HomeAt">When the person comes home; empty when at home already.</param>
/// <param name="OrderedOn">The ordered day of the start of care; empty when none is.</param>
/// <param name="Note">What else matters.</param>
public sealed record ReferralEntry(string Name, Instant? ReferredAt, Instant? HomeAt, LocalDate? OrderedOn, string Note);

/// <summary>Keeps referrals until the first visit was made or the referral was declined.</summary>
public sealed class KeepReferral(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.KeepReferral"/>. Without a time of its own the time of entry counts, and the list says so.</summary>
    public Task<Outcome<Referral>> AddAsync(Actor actor, ReferralEntry entry, CancellationToken cancel) => AgencyWork.DoAsync<Referral>(databases, clock, actor, AgencyAction.KeepReferral, async (db, agency) =>
    {
        if (string.IsNullOrWhiteSpace(entry.Name))
            return new Refusal("referral-name-missing", "It is not said who is referred.", "Write the name.");
        if (entry.ReferredAt > agency.Now)
            return new Refusal("referred-in-future", "The referral would come in the future.", "Correct the time, or leave it empty when it is unknown.");
        int number = await db.Referrals.CountAsync(cancel) + 1;
        var referral = new Referral
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"F{number}"),
            Name = entry.Name.Trim(),
            ReferredAt = entry.ReferredAt,
            EnteredAt = agency.Now,
            HomeAt = entry.HomeAt,
            OrderedOn = entry.OrderedOn,
            Note = entry.Note.Trim(),
            EnteredBy = actor.Name,
        };
        db.Referrals.Add(referral);
        await AuditTrail.AppendAsync(db, actor, "add-referral", referral.Id, entry.ReferredAt is null ? "time missing: counts from entry" : "", clock.RealNow(), cancel);
        return referral;
    }, cancel);

    /// <summary>Closes a referral: the first visit was made, or it was declined; the reason says which. Needs <see cref="AgencyAction.KeepReferral"/>.</summary>
    public Task<Outcome<Referral>> CloseAsync(Actor actor, string id, string because, CancellationToken cancel) => AgencyWork.DoAsync<Referral>(databases, clock, actor, AgencyAction.KeepReferral, async (db, agency) =>
    {
        Referral? referral = await db.Referrals.SingleOrDefaultAsync(r => r.Id == id && r.ClosedAt == null, cancel);
        if (referral is null) return new Refusal("referral-closed", "There is no such open referral.", "Look at the list again.");
        if (string.IsNullOrWhiteSpace(because))
            return new Refusal("referral-reason-missing", "It is not said why it is closed.", "Say when the first visit was made, or why it was declined.");
        var entry = db.Entry(referral);
        entry.Property(r => r.ClosedAt).CurrentValue = agency.Now;
        entry.Property(r => r.ClosedBy).CurrentValue = actor.Name;
        entry.Property(r => r.ClosedBecause).CurrentValue = because.Trim();
        await LetGoAsync(db, actor, agency, referral, because.Trim(), cancel);
        await AuditTrail.AppendAsync(db, actor, "close-referral", id, because.Trim(), clock.RealNow(), cancel);
        return referral;
    }, cancel);

    /// <summary>A place that was held for it is free again.</summary>
    private static async Task LetGoAsync(AgencyDb db, Actor actor, AgencyAtHand agency, Referral referral, string because, CancellationToken cancel)
    {
        foreach (FiledTrouble filed in await db.Troubles.Where(t => t.State == TroubleState.Applied && t.Title.StartsWith(ReferralCase.TitleBegins)).ToListAsync(cancel))
        {
            if (filed.Entry is CanWeTakeIt { Released: null } asked && asked.KeptAs == referral.Id)
                db.Entry(filed).Property(t => t.Entry).CurrentValue = asked with { Released = new PlaceReleased(agency.Now, actor.Name, $"The referral was closed: {because}") };
        }
    }
}
