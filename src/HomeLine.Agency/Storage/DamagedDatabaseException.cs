namespace HomeLine.Agency.Storage;

/// <summary>The database file cannot be trusted. Nothing was changed; docs/restore.md says what to do.</summary>
public sealed class DamagedDatabaseException : Exception
{
    public DamagedDatabaseException(string file, string finding, Exception? cause = null)
        : base($"The database {file} is damaged: {finding}. Nothing was changed. Restore it from a backup (docs/restore.md).", cause)
    {
        Finding = finding;
    }

    /// <summary>What was found.</summary>
    public string Finding { get; }
}
