using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace HomeLine.Agency.Storage.Postgres;

/// <summary>The agency's database on a PostgreSQL server.</summary>
public sealed class PostgresAgencyDb(DbContextOptions<PostgresAgencyDb> options) : AgencyDb(options)
{
    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        foreach (IMutableEntityType entity in builder.Model.GetEntityTypes())
        {
            foreach (IMutableProperty property in entity.GetProperties())
                if (property.GetValueConverter() is IJsonText) property.SetColumnType("jsonb");
        }
    }
}
