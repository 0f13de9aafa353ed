using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage.Sqlite;

/// <summary>The agency's database in one file beside the program.</summary>
public sealed class SqliteAgencyDb(DbContextOptions<SqliteAgencyDb> options) : AgencyDb(options);
