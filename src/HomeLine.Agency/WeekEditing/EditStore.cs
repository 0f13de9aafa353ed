using System.Collections.Immutable;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>The changes of a week in the database.</summary>
internal static class EditStore
{
    /// <summary>All of them, in order.</summary>
    public static async Task<ImmutableArray<WeekEdit>> OfAsync(AgencyDb db, LocalDate firstDay, CancellationToken cancel) =>
        [.. await db.WeekEdits.AsNoTracking().Where(e => e.FirstDay == firstDay).OrderBy(e => e.Number).ToListAsync(cancel)];

    /// <summary>Adds one, numbered after the last; it is kept with the work under way.</summary>
    public static async Task<WeekEdit> AddAsync(AgencyDb db, WeekEdit edit, CancellationToken cancel)
    {
        int last = await db.WeekEdits.Where(e => e.FirstDay == edit.FirstDay).MaxAsync(e => (int?)e.Number, cancel) ?? 0;
        WeekEdit numbered = edit with { Number = last + 1 };
        db.WeekEdits.Add(numbered);
        return numbered;
    }
}
