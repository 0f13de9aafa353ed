using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage;

/// <summary>Everything the agency knows as of one end of the audit chain.</summary>
/// <param name="ChainEnd">Hash of the last audit entry; empty when there is none.</param>
/// <param name="Read">The roster as read.</param>
/// <param name="Files">The same by patient.</param>
/// <param name="Decided">Every licensed decision.</param>
/// <param name="Closures">Every closure that was reported and not taken back.</param>
/// <param name="Held">Every place held for a referral and not let go.</param>
internal sealed record RememberedRoster(
    string? ChainEnd, RosterAsRead Read, CareFiles Files, ImmutableArray<DecisionRecord> Decided, ImmutableArray<RoadShut> Closures, ImmutableArray<KeptPlace> Held)
{
    public AgencyRoster Roster => Read.Roster;

    public static Task<string?> ChainEndAsync(AgencyDb db, CancellationToken cancel) =>
        db.AuditEntries.OrderByDescending(entry => entry.Sequence).Select(entry => entry.Hash).FirstOrDefaultAsync(cancel);

    /// <summary>Reads it; of what <paramref name="before"/> holds only what moved on.</summary>
    public static async Task<RememberedRoster?> ReadAsync(AgencyDb db, RememberedRoster? before, CancellationToken cancel)
    {
        RosterAsRead? read = await RosterReader.FindAsync(db, before?.Read, cancel);
        if (read is null) return null;
        return new RememberedRoster(
            await ChainEndAsync(db, cancel),
            read,
            before is null ? CareFiles.Of(read.Roster) : before.Files.After(before.Roster, read.Roster),
            [.. await db.Decisions.AsNoTracking().ToListAsync(cancel)],
            await ClosuresAsync(db, cancel),
            await HeldAsync(db, cancel));
    }

    private static async Task<ImmutableArray<KeptPlace>> HeldAsync(AgencyDb db, CancellationToken cancel)
    {
        List<FiledTrouble> taken = await db.Troubles.AsNoTracking()
            .Where(t => t.State == TroubleState.Applied && t.Title.StartsWith(ReferralCase.TitleBegins)).ToListAsync(cancel);
        return
        [
            .. from trouble in taken
               where trouble.Entry is CanWeTakeIt { Released: null }
               let place = trouble.Offer?.Answers.FirstOrDefault(a => a.Key == trouble.AppliedAnswer)?.Holds
               where place is not null
               select new KeptPlace(trouble.Id, ((CanWeTakeIt)trouble.Entry).Referral.Name.Trim(), place),
        ];
    }

    /// <summary>Found by the title they are filed under, so that not every trouble of the year is read.</summary>
    private static async Task<ImmutableArray<RoadShut>> ClosuresAsync(AgencyDb db, CancellationToken cancel)
    {
        List<TroubleEntry> entries = await db.Troubles.AsNoTracking()
            .Where(t => t.State != TroubleState.Closed && t.Title.StartsWith(ClosureCase.TitleBegins)).Select(t => t.Entry).ToListAsync(cancel);
        return [.. entries.OfType<RoadShut>()];
    }
}
