using System.Data.Common;
using System.Globalization;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace HomeLine.Agency.Storage.Sqlite;

/// <summary>
/// What every connection to the file is set to: a write-ahead log, synced at each commit, so that what was
/// acknowledged survives a power cut; foreign keys on; and patience while somebody else writes.
/// </summary>
internal sealed class SafePragmas : DbConnectionInterceptor
{
    /// <summary>How long a writer waits for its turn, milliseconds: our own default.</summary>
    private const int BusyTimeout = 10_000;

    private static readonly string Set = string.Create(CultureInfo.InvariantCulture,
        $"PRAGMA busy_timeout = {BusyTimeout}; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;");

    /// <summary>Setting, and the value it must have, as the database spells it.</summary>
    public static readonly IReadOnlyDictionary<string, string> Expected = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["journal_mode"] = "wal",
        ["synchronous"] = "2",
        ["foreign_keys"] = "1",
        ["busy_timeout"] = BusyTimeout.ToString(CultureInfo.InvariantCulture),
    };

    /// <inheritdoc/>
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using DbCommand command = connection.CreateCommand();
        command.CommandText = Set;
        command.ExecuteNonQuery();
    }

    /// <inheritdoc/>
    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using DbCommand command = connection.CreateCommand();
        command.CommandText = Set;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
