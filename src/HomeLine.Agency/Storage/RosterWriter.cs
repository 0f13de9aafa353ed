using HomeLine.Agency.Access;
using HomeLine.Agency.Roster;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Storage;

/// <summary>Stores a change of the roster: all of it or nothing, and never a deletion.</summary>
public static class RosterWriter
{
    /// <summary>
    /// Applies the change in one transaction with its audit entry. Refused with <c>roster-conflict</c> when rows cannot be stored,
    /// and with <c>stale-import</c> when the roster moved since the change was worked out.
    /// </summary>
    /// <returns>Number of rows written.</returns>
    public static async Task<Outcome<int>> ApplyAsync(
        AgencyDb db, Actor actor, RosterChange change, Instant at, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ImportRoster) is { } refusal) return refusal;
        if (change.Conflicts is [var first, ..])
            return new Refusal("roster-conflict", $"{first.Kind} {first.Key}: {first.Refusal.Sentence}", first.Refusal.Action);
        await using var work = await db.BeginWorkAsync(cancel);
        if (await IsStaleAsync(db, change, cancel))
            return new Refusal("stale-import", "The roster was changed since this preview was made.", "Make the preview again.");
        await WriteAsync(db, change, cancel);
        await AuditTrail.AppendAsync(db, actor, "import-roster", "roster", InWords(change), at, cancel);
        await work.CommitAsync(cancel);
        return change.Writes;
    }

    /// <summary>Writes the rows into the work under way; the caller audits and commits.</summary>
    internal static async Task WriteAsync(AgencyDb db, RosterChange change, CancellationToken cancel)
    {
        await Write(db, change.Profile, cancel);
        await Write(db, change.Map, cancel);
        await Write(db, change.Nurses, cancel);
        await Write(db, change.Patients, cancel);
        await Write(db, change.Lines, cancel);
        await Write(db, change.Infusions, cancel);
        await Write(db, change.Events, cancel);
        await Write(db, change.Orders, cancel);
        await Write(db, change.Caregivers, cancel);
        await Write(db, change.Holds, cancel);
        await Write(db, change.Exceptions, cancel);
        await Write(db, change.OutsideCare, cancel);
        await Write(db, change.Policy, cancel);
        db.ChangeTracker.Clear();
    }

    /// <summary>Kind by kind, so that rows keep the order they came in, whatever they refer to.</summary>
    private static async Task Write<T>(AgencyDb db, RowChanges<T> rows, CancellationToken cancel)
        where T : class
    {
        db.AddRange(rows.Added);
        await db.SaveChangesAsync(cancel);
        if (rows.Changed.IsEmpty) return;
        var after = rows.Changed.ToDictionary(c => c.Key, c => c.After, StringComparer.Ordinal);
        foreach (T before in await db.Set<T>().ToListAsync(cancel))
        {
            if (after.TryGetValue(rows.KeyOf(before), out T? now)) Replace(db, before, now);
        }
        await db.SaveChangesAsync(cancel);
    }

    /// <summary>The new record takes the old one's row; its version is checked when it is saved.</summary>
    private static void Replace<T>(AgencyDb db, T before, T after)
        where T : class
    {
        var old = db.Entry(before);
        object? row = old.Property(RowKey.Row).CurrentValue, version = old.Property(RowKey.Version).CurrentValue;
        old.State = EntityState.Detached;
        var entry = db.Entry(after);
        entry.Property(RowKey.Row).CurrentValue = row;
        entry.Property(RowKey.Version).CurrentValue = version;
        entry.State = EntityState.Modified;
    }

    private static async Task<bool> IsStaleAsync(AgencyDb db, RosterChange change, CancellationToken cancel)
    {
        AgencyRoster? now = await RosterReader.FindAsync(db, cancel);
        return Moved(change.Profile, now is null ? [] : [now.Profile])
            || Moved(change.Map, now is null ? [] : [now.Map])
            || Moved(change.Nurses, now?.Nurses) || Moved(change.Patients, now?.Patients)
            || Moved(change.Lines, now?.Lines) || Moved(change.Infusions, now?.Infusions)
            || Moved(change.Events, now?.Events) || Moved(change.Orders, now?.Orders)
            || Moved(change.Caregivers, now?.Caregivers) || Moved(change.Holds, now?.Holds)
            || Moved(change.Exceptions, now?.Exceptions) || Moved(change.OutsideCare, now?.OutsideCare)
            || Moved(change.Policy, now?.Policy);
    }

    /// <summary>Whether a row to be added is there already, or a row to be changed is no longer what the change was worked out from.</summary>
    private static bool Moved<T>(RowChanges<T> rows, IEnumerable<T>? stored)
        where T : class
    {
        if (rows.Added.IsEmpty && rows.Changed.IsEmpty) return false;
        var now = (stored ?? []).ToDictionary(rows.KeyOf, StringComparer.Ordinal);
        return rows.Added.Any(row => now.ContainsKey(rows.KeyOf(row)))
            || rows.Changed.Any(c => !now.TryGetValue(c.Key, out T? row) || !RowText.Differences(c.Before, row).IsEmpty);
    }

    private static string InWords(RosterChange change) =>
        string.Join(", ", change.Rows
            .Where(r => r.State is RowState.Added or RowState.Changed)
            .GroupBy(r => (r.Kind, r.State))
            .Select(g => $"{g.Count()} {g.Key.Kind} {(g.Key.State == RowState.Added ? "added" : "changed")}"));
}
