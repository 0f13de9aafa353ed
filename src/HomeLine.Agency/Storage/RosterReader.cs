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
    public static Task<AgencyRoster?> FindAsync(AgencyDb db, CancellationToken cancel) => FindAsync(db, [], 0, cancel);

    /// <summary>The roster, reading only those ledger entries that are not known yet.</summary>
    /// <param name="db">The database.</param>
    /// <param name="known">Ledger entries read before.</param>
    /// <param name="lastKnownRow">Row number of the last of them; 0 for none.</param>
    /// <param name="cancel">Stops the reading.</param>
    internal static async Task<AgencyRoster?> FindAsync(AgencyDb db, ImmutableArray<LineEvent> known, long lastKnownRow, CancellationToken cancel)
    {
        await using var reading = db.Database.CurrentTransaction is null ? await db.BeginReadingAsync(cancel) : null;
        AgencyProfile? profile = await db.Profile.AsNoTracking().SingleOrDefaultAsync(cancel);
        if (profile is null) return null;
        return new AgencyRoster
        {
            Profile = profile,
            Map = await db.Map.AsNoTracking().SingleAsync(cancel),
            Patients = await All(db.Patients),
            Lines = await All(db.Lines),
            Infusions = await All(db.Infusions),
            Events = known.AddRange(await All(db.LineEvents.Where(entry => EF.Property<long>(entry, RowKey.Row) > lastKnownRow))),
            Orders = await All(db.Orders),
            Caregivers = await All(db.Caregivers),
            Holds = await All(db.Holds),
            Exceptions = await All(db.Exceptions),
            OutsideCare = await All(db.OutsideCare),
            Nurses = await All(db.Nurses),
            Policy = await All(db.PolicyRules),
        };

        async Task<ImmutableArray<T>> All<T>(IQueryable<T> rows)
            where T : class =>
            [.. await rows.AsNoTracking().OrderBy(row => EF.Property<long>(row, RowKey.Row)).ToListAsync(cancel)];
    }
}
