using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace HomeLine.Agency.Storage.Postgres;

/// <summary>Used only by the migration tool; it never opens a connection.</summary>
internal sealed class PostgresAgencyDbAtDesignTime : IDesignTimeDbContextFactory<PostgresAgencyDb>
{
    public PostgresAgencyDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresAgencyDb>().UseNpgsql("Host=localhost;Database=design-time").Options);
}
