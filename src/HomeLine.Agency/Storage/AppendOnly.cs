using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage;

/// <summary>
/// Rows that are written once and never touched again: the ledger, the audit trail, published versions, printed sheets.
/// The database refuses as well, by triggers, should somebody come past this door.
/// </summary>
internal static class AppendOnly
{
    public const string Mark = "HomeLine:AppendOnly";

    public static EntityTypeBuilder<T> WrittenOnce<T>(this EntityTypeBuilder<T> entity)
        where T : class
    {
        entity.HasAnnotation(Mark, true);
        return entity;
    }

    /// <exception cref="InvalidOperationException">A written-once row is about to be changed or deleted.</exception>
    public static void Guard(DbContext db)
    {
        foreach (var entry in db.ChangeTracker.Entries())
        {
            if (entry.State is EntityState.Modified or EntityState.Deleted && entry.Metadata.FindAnnotation(Mark) is not null)
                throw new InvalidOperationException($"{entry.Metadata.ClrType.Name} is append-only: correct it with a new entry.");
        }
    }
}
