using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Ledger;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage;

/// <summary>Reads everything the agency knows, as of one moment.</summary>
public static class RosterReader
{
    /// <summary>The roster, rows in the order they were entered.</summary>
    /// <exception cref="InvalidOperationException">The agency was never opened: see <see cref="HoldsRosterAsync"/>.</exception>
    public static async Task<AgencyRoster> ReadAsync(AgencyDb db, CancellationToken cancel) =>
        await FindAsync(db, cancel) ?? throw new InvalidOperationException("No agency has been opened in this database.");

    /// <summary>Whether an agency was opened here.</summary>
    public static Task<bool> HoldsRosterAsync(AgencyDb db, CancellationToken cancel) => db.Profile.AnyAsync(cancel);

    /// <summary>The roster, or nothing when no agency was opened here.</summary>
    public static async Task<AgencyRoster?> FindAsync(AgencyDb db, CancellationToken cancel) => (await FindAsync(db, null, cancel))?.Roster;

    /// <summary>The roster, reading only what is not known from before: whole tables that moved on, and the ledger's new entries.</summary>
    internal static async Task<RosterAsRead?> FindAsync(AgencyDb db, RosterAsRead? before, CancellationToken cancel)
    {
        await using var reading = db.Database.CurrentTransaction is null ? await db.BeginReadingAsync(cancel) : null;
        AgencyProfile? profile = await db.Profile.AsNoTracking().SingleOrDefaultAsync(cancel);
        if (profile is null) return null;
        AgencyRoster? known = before?.Roster;
        var marks = ImmutableDictionary.CreateBuilder<string, TableMark>();
        AgencyRoster roster = new()
        {
            Profile = profile,
            // The same map object as long as nothing changed: what was worked out for it stands.
            Map = (await Table(db.Map, known is null ? null : (ImmutableArray<AgencyMap>?)[known.Map]))[0],
            Patients = await Table(db.Patients, known?.Patients),
            Lines = await Table(db.Lines, known?.Lines),
            Infusions = await Table(db.Infusions, known?.Infusions),
            Orders = await Table(db.Orders, known?.Orders),
            Caregivers = await Table(db.Caregivers, known?.Caregivers),
            Holds = await Table(db.Holds, known?.Holds),
            Exceptions = await Table(db.Exceptions, known?.Exceptions),
            OutsideCare = await Table(db.OutsideCare, known?.OutsideCare),
            Nurses = await Table(db.Nurses, known?.Nurses),
            Policy = await Table(db.PolicyRules, known?.Policy),
        };
        long lastEvent = before?.LastEventRow ?? 0;
        ImmutableArray<LineEvent> news = await InOrder(db.LineEvents.Where(entry => EF.Property<long>(entry, RowKey.Row) > lastEvent));
        if (!news.IsEmpty) lastEvent = await db.LineEvents.MaxAsync(entry => EF.Property<long>(entry, RowKey.Row), cancel);
        // Signed visits are written once as well; of each only what planning asks for is read.
        long lastVisit = before?.LastVisitRow ?? 0;
        var signed = await db.VisitRecords.AsNoTracking().Where(r => EF.Property<long>(r, RowKey.Row) > lastVisit).OrderBy(r => EF.Property<long>(r, RowKey.Row))
            .Select(r => new { Row = EF.Property<long>(r, RowKey.Row), r.Id, r.Patient, r.Day, r.Visit, r.Amends, r.Events }).ToListAsync(cancel);
        if (signed is [.., var newest]) lastVisit = newest.Row;
        roster = roster with
        {
            Events = (known?.Events ?? []).AddRange(news),
            SignedVisits = (known?.SignedVisits ?? []).AddRange(signed.Select(r => new SignedVisit(r.Id, r.Patient, r.Day, r.Visit, r.Amends, r.Events))),
        };
        return new RosterAsRead(roster, marks.ToImmutable(), lastEvent, lastVisit);

        async Task<ImmutableArray<T>> Table<T>(IQueryable<T> rows, ImmutableArray<T>? read)
            where T : class
        {
            TableMark mark = await TableMark.OfAsync(rows, cancel);
            marks[typeof(T).Name] = mark;
            return read is { } same && before!.Marks.GetValueOrDefault(typeof(T).Name) == mark ? same : await InOrder(rows);
        }

        async Task<ImmutableArray<T>> InOrder<T>(IQueryable<T> rows)
            where T : class =>
            [.. await rows.AsNoTracking().OrderBy(row => EF.Property<long>(row, RowKey.Row)).ToListAsync(cancel)];
    }
}

/// <summary>A roster and how far each table had come.</summary>
/// <param name="Roster">The roster.</param>
/// <param name="Marks">By kind of row.</param>
/// <param name="LastEventRow">Row number of the newest ledger entry; 0 for none.</param>
/// <param name="LastVisitRow">Row number of the newest signed visit; 0 for none.</param>
internal sealed record RosterAsRead(AgencyRoster Roster, ImmutableDictionary<string, TableMark> Marks, long LastEventRow, long LastVisitRow);
