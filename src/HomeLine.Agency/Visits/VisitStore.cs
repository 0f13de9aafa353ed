using System.Collections.Immutable;
using HomeLine.Agency.Storage;
using HomeLine.LineCare.Lines;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Visits;

/// <summary>Reads signed visits.</summary>
internal static class VisitStore
{
    /// <summary>Every record of a patient, the first signed first.</summary>
    public static async Task<ImmutableArray<VisitRecord>> OfPatientAsync(AgencyDb db, PatientId patient, CancellationToken cancel) =>
        [.. await db.VisitRecords.AsNoTracking().Where(r => r.Patient == patient).OrderBy(r => EF.Property<long>(r, RowKey.Row)).ToListAsync(cancel)];

    /// <summary>Records that no other one took the place of.</summary>
    public static ImmutableArray<VisitRecord> Standing(ImmutableArray<VisitRecord> records)
    {
        var amended = records.Select(r => r.Amends).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return [.. records.Where(r => !amended.Contains(r.Id))];
    }
}
