using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace HomeLine.Agency.Storage.Sqlite;

/// <summary>Used only by the migration tool; it never opens a database.</summary>
internal sealed class SqliteAgencyDbAtDesignTime : IDesignTimeDbContextFactory<SqliteAgencyDb>
{
    public SqliteAgencyDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteAgencyDb>().UseSqlite("Data Source=design-time.db").Options);
}
