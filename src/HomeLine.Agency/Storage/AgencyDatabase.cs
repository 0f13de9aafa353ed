using System.Globalization;
using HomeLine.Agency.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Storage;

/// <summary>Makes the database ready at start-up, or says why it will not be touched.</summary>
public sealed class AgencyDatabase(IDbContextFactory<AgencyDb> databases)
{
    /// <summary>Checks, migrates and asserts the safety settings. Never creates an empty database over a damaged one.</summary>
    /// <exception cref="DamagedDatabaseException">It cannot be trusted: restore it, do not start on it.</exception>
    public async Task PrepareAsync(CancellationToken cancel)
    {
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        if (!db.Database.IsSqlite())
        {
            await RefuseNewerAsync(db, cancel);
            await db.Database.MigrateAsync(cancel);
            return;
        }
        string file = new SqliteConnectionStringBuilder(db.Database.GetConnectionString()).DataSource;
        using FileStream turn = await DatabaseFile.TakeTurnAsync(file, cancel);
        DatabaseFile.RefuseDamaged(file);
        if (File.Exists(file)) await CheckInsideAsync(db, file, cancel);
        await db.Database.MigrateAsync(cancel);
        await AssertPragmasAsync(db, cancel);
    }

    private static async Task CheckInsideAsync(AgencyDb db, string file, CancellationToken cancel)
    {
        try
        {
            string verdict = await ScalarAsync(db, "PRAGMA integrity_check", cancel);
            if (verdict != "ok") throw new DamagedDatabaseException(file, verdict);
            // No table at all: a first start that was killed before it made any.
            if (await ScalarAsync(db, "SELECT count(*) FROM sqlite_master", cancel) == "0") return;
            if (await ScalarAsync(db, "SELECT count(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'", cancel) == "0")
                throw new DamagedDatabaseException(file, "it is not a database of this program");
            await RefuseNewerAsync(db, cancel);
            // Only this process is preparing the file: a migration lock found now was left by one that was killed.
            await db.Database.ExecuteSqlAsync($"DROP TABLE IF EXISTS \"__EFMigrationsLock\"", cancel);
        }
        catch (SqliteException cannotRead)
        {
            throw new DamagedDatabaseException(file, cannotRead.Message, cannotRead);
        }
    }

    private static async Task RefuseNewerAsync(AgencyDb db, CancellationToken cancel)
    {
        var known = db.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        if ((await db.Database.GetAppliedMigrationsAsync(cancel)).FirstOrDefault(m => !known.Contains(m)) is { } newer)
            throw new InvalidOperationException($"The database was made by a newer version of the program (it holds {newer}). Start that version.");
    }

    private static async Task AssertPragmasAsync(AgencyDb db, CancellationToken cancel)
    {
        foreach ((string name, string expected) in SafePragmas.Expected)
        {
            string found = await ScalarAsync(db, $"PRAGMA {name}", cancel);
            if (found != expected)
                throw new InvalidOperationException($"The database runs with {name} = {found} instead of {expected}; saved work would not be safe.");
        }
    }

    private static async Task<string> ScalarAsync(AgencyDb db, string fixedText, CancellationToken cancel)
    {
        await db.Database.OpenConnectionAsync(cancel);
        await using var command = db.Database.GetDbConnection().CreateCommand();
#pragma warning disable CA2100 // Only texts of this file and its settings come here; a pragma takes no parameters.
        command.CommandText = fixedText;
#pragma warning restore CA2100
        return Convert.ToString(await command.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture) ?? "";
    }
}
