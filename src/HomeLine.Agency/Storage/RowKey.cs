using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage;

/// <summary>
/// The number each row gets when it is first stored, and the version that grows with every change.
/// Both live in the mapping alone: the records of the trade know neither.
/// </summary>
internal static class RowKey
{
    public const string Row = "Row";
    public const string Version = "Version";

    /// <summary>Keyed by a growing number, so that rows come back in the order they were entered.</summary>
    public static EntityTypeBuilder<T> NumberedRows<T>(this EntityTypeBuilder<T> entity, string table)
        where T : class
    {
        entity.ToTable(table);
        entity.Property<long>(Row).ValueGeneratedOnAdd();
        entity.HasKey(Row);
        return entity;
    }

    /// <summary>The only row of its table.</summary>
    public static EntityTypeBuilder<T> OnlyRow<T>(this EntityTypeBuilder<T> entity, string table)
        where T : class
    {
        entity.ToTable(table, t => t.HasCheckConstraint($"ck_{table}_one_row", "row = 1"));
        entity.Property<long>(Row).HasDefaultValue(1L);
        entity.HasKey(Row);
        return entity;
    }

    /// <summary>The row may change; a change made on an old version of it is refused.</summary>
    public static EntityTypeBuilder<T> Changeable<T>(this EntityTypeBuilder<T> entity)
        where T : class
    {
        entity.Property<int>(Version).IsConcurrencyToken();
        return entity;
    }

    /// <summary>Counts versions ourselves, because SQLite makes no row version.</summary>
    public static void CountVersions(DbContext db)
    {
        foreach (var entry in db.ChangeTracker.Entries())
        {
            IProperty? version = entry.Metadata.FindProperty(Version);
            if (version is not { IsConcurrencyToken: true }) continue;
            var property = entry.Property(Version);
            if (entry.State == EntityState.Added) property.CurrentValue = 1;
            if (entry.State == EntityState.Modified) property.CurrentValue = (int)property.OriginalValue! + 1;
        }
    }
}
