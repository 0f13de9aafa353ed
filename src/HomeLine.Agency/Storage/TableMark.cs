using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage;

/// <summary>
/// How far a table had come when it was read. Rows are added or get a new version, and a row that went is one less: two equal marks are one content.
/// </summary>
/// <param name="Rows">Number of rows.</param>
/// <param name="Versions">Sum of the rows' versions; each change adds one.</param>
/// <param name="LastRow">Number of the newest row; 0 for none.</param>
internal readonly record struct TableMark(int Rows, long Versions, long LastRow)
{
    public static async Task<TableMark> OfAsync<T>(IQueryable<T> rows, CancellationToken cancel)
        where T : class
    {
        var mark = await rows.GroupBy(_ => 1)
            .Select(all => new
            {
                Rows = all.Count(),
                Versions = all.Sum(row => (long)EF.Property<int>(row, RowKey.Version)),
                Last = all.Max(row => EF.Property<long>(row, RowKey.Row)),
            })
            .SingleOrDefaultAsync(cancel);
        return mark is null ? default : new TableMark(mark.Rows, mark.Versions, mark.Last);
    }
}
