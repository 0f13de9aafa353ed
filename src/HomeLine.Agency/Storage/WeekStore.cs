using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Storage.Mapping;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Storage;

/// <summary>
/// Keeps weeks: one published and at most one draft for each first day, and every version ever published.
/// Rights are checked by the use cases that call it; versions and double bookings are checked here and by the database.
/// </summary>
public static class WeekStore
{
    /// <summary>The published week, or nothing.</summary>
    public static Task<StoredWeek?> PublishedAsync(AgencyDb db, LocalDate firstDay, CancellationToken cancel) =>
        FindAsync(db, firstDay, isDraft: false, cancel);

    /// <summary>The draft, or nothing.</summary>
    public static Task<StoredWeek?> DraftAsync(AgencyDb db, LocalDate firstDay, CancellationToken cancel) =>
        FindAsync(db, firstDay, isDraft: true, cancel);

    /// <summary>First days of the weeks that are published, in order.</summary>
    public static async Task<ImmutableArray<LocalDate>> PublishedWeeksAsync(AgencyDb db, CancellationToken cancel) =>
        [.. await db.Weeks.Where(w => !w.IsDraft).Select(w => w.FirstDay).OrderBy(day => day).ToListAsync(cancel)];

    /// <summary>Every published version of a week, the first one first.</summary>
    public static async Task<ImmutableArray<PublishedVersion>> HistoryAsync(AgencyDb db, LocalDate firstDay, CancellationToken cancel) =>
        [.. await db.PublishedVersions.AsNoTracking().Where(v => v.FirstDay == firstDay).OrderBy(v => v.Version).ToListAsync(cancel)];

    /// <summary>
    /// Saves a draft. <paramref name="seenRevision"/> is the revision it was changed from, 0 when there was none; a draft that somebody
    /// else saved meanwhile is refused with <c>stale-draft</c> and stays as it is.
    /// </summary>
    public static async Task<Outcome<StoredWeek>> SaveDraftAsync(
        AgencyDb db, Actor actor, PlannedWeek week, int seenRevision, Instant at, CancellationToken cancel)
    {
        if (DoubleBooking.In(week) is { } twice) return twice;
        await using var turn = db.Database.CurrentTransaction is null ? await db.BeginWorkAsync(cancel) : null;
        WeekRow? row = await db.Weeks.SingleOrDefaultAsync(w => w.FirstDay == week.FirstDay && w.IsDraft, cancel);
        if ((row?.Version ?? 0) != seenRevision)
            return new Refusal("stale-draft", $"{row?.SavedBy ?? "Somebody"} changed this draft meanwhile.", "Look at the draft again, then repeat your change.");
        StoredWeek saved = await StoreAsync(db, row, actor, week, week.Version, isDraft: true, at, cancel);
        await AuditTrail.AppendAsync(db, actor, "save-draft", Subject(week), $"{week.Visits.Length} visits", at, cancel);
        if (turn is not null) await turn.CommitAsync(cancel);
        return saved;
    }

    /// <summary>
    /// Publishes a week as the next version and drops its draft. <c>week.Version</c> is the version it was made from, 0 for none;
    /// when another version was published meanwhile it is refused with <c>stale-week</c> and nothing is lost.
    /// </summary>
    public static async Task<Outcome<PlannedWeek>> PublishAsync(
        AgencyDb db, Actor actor, PlannedWeek week, string reason, Instant at, CancellationToken cancel)
    {
        if (DoubleBooking.In(week) is { } twice) return twice;
        await using var turn = db.Database.CurrentTransaction is null ? await db.BeginWorkAsync(cancel) : null;
        WeekRow? row = await db.Weeks.SingleOrDefaultAsync(w => w.FirstDay == week.FirstDay && !w.IsDraft, cancel);
        int stands = row?.PublishedVersion ?? 0;
        if (stands != week.Version)
            return new Refusal(
                "stale-week",
                $"{row?.SavedBy ?? "Somebody"} published version {stands} of this week meanwhile; yours was made from version {week.Version}.",
                "Look at the new version, then repeat your change.");
        PlannedWeek next = week with { Version = stands + 1 };
        await StoreAsync(db, row, actor, next, next.Version, isDraft: false, at, cancel);
        db.PublishedVersions.Add(new PublishedVersion(next.FirstDay, next.Version, at, actor.Name, reason, next));
        db.Weeks.RemoveRange(await db.Weeks.Where(w => w.FirstDay == week.FirstDay && w.IsDraft).ToListAsync(cancel));
        await AuditTrail.AppendAsync(db, actor, "publish-week", Subject(week), $"version {next.Version}: {reason}", at, cancel);
        if (turn is not null) await turn.CommitAsync(cancel);
        return next;
    }

    /// <summary>A published week of which nothing was saved since it was last read is not read again.</summary>
    private static async Task<StoredWeek?> FindAsync(AgencyDb db, LocalDate firstDay, bool isDraft, CancellationToken cancel)
    {
        await using var reading = db.Database.CurrentTransaction is null ? await db.BeginReadingAsync(cancel) : null;
        if (reading is null || isDraft || db.Memory is not { } memory) return await ReadAsync(db, firstDay, isDraft, cancel);
        WeekMark? mark = await db.Weeks.Where(w => w.FirstDay == firstDay && !w.IsDraft)
            .Select(w => new WeekMark(w.Row, w.Version, w.SavedAt, w.SavedBy)).SingleOrDefaultAsync(cancel);
        if (mark is null) return null;
        if (memory.Week(firstDay) is { } known && known.Mark == mark) return known.Week;
        StoredWeek read = (await ReadAsync(db, firstDay, isDraft, cancel))!;
        memory.Remember(new RememberedWeek(mark, read));
        return read;
    }

    private static async Task<StoredWeek?> ReadAsync(AgencyDb db, LocalDate firstDay, bool isDraft, CancellationToken cancel)
    {
        WeekRow? row = await db.Weeks.AsNoTracking().SingleOrDefaultAsync(w => w.FirstDay == firstDay && w.IsDraft == isDraft, cancel);
        if (row is null) return null;
        List<WeekVisit> visits = await db.Visits.AsNoTracking()
            .Where(v => EF.Property<long>(v, VisitMapping.Week) == row.Row)
            .OrderBy(v => EF.Property<long>(v, RowKey.Row)).ToListAsync(cancel);
        return AsStored(row, [.. visits]);
    }

    private static async Task<StoredWeek> StoreAsync(
        AgencyDb db, WeekRow? row, Actor actor, PlannedWeek week, int publishedVersion, bool isDraft, Instant at, CancellationToken cancel)
    {
        if (row is null)
        {
            row = new WeekRow { FirstDay = week.FirstDay, IsDraft = isDraft, PublishedVersion = 0, Unmet = [], SavedAt = at, SavedBy = "" };
            db.Weeks.Add(row);
        }
        (row.PublishedVersion, row.Unmet, row.SavedAt, row.SavedBy) = (publishedVersion, week.Unmet, at, actor.Name);
        // An unchanged head still gets a new version: its visits may have changed.
        if (db.Entry(row).State == EntityState.Unchanged) db.Entry(row).State = EntityState.Modified;
        await db.SaveChangesAsync(cancel);
        long number = row.Row;
        await db.Visits.Where(v => EF.Property<long>(v, VisitMapping.Week) == number).ExecuteDeleteAsync(cancel);
        foreach (WeekVisit visit in week.Visits)
        {
            var entry = db.Entry(visit with { });
            entry.Property(VisitMapping.Week).CurrentValue = number;
            entry.State = EntityState.Added;
        }
        await db.SaveChangesAsync(cancel);
        return AsStored(row, week.Visits);
    }

    private static StoredWeek AsStored(WeekRow row, ImmutableArray<WeekVisit> visits) => new(
        new PlannedWeek { FirstDay = row.FirstDay, Version = row.PublishedVersion, Visits = visits, Unmet = row.Unmet },
        row.IsDraft, row.Version, row.SavedAt, row.SavedBy);

    private static string Subject(PlannedWeek week) => $"week {LocalDatePattern.Iso.Format(week.FirstDay)}";
}
