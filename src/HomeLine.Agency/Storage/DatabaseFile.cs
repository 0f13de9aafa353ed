namespace HomeLine.Agency.Storage;

/// <summary>Looks at the database file from outside. It is never opened here: closing it again would drop the database's own locks.</summary>
internal static class DatabaseFile
{
    /// <summary>Five a second for a minute: a migration takes seconds.</summary>
    private const int MostTries = 300;

    /// <exception cref="DamagedDatabaseException">The file is empty, or gone while its log is still there.</exception>
    public static void RefuseDamaged(string file)
    {
        var main = new FileInfo(file);
        if (main is { Exists: true, Length: 0 }) throw new DamagedDatabaseException(file, "the file is empty");
        if (!main.Exists && File.Exists(file + "-wal")) throw new DamagedDatabaseException(file, "the file is gone but its log is there");
    }

    /// <summary>One process at a time prepares a file; the turn ends with the stream, also when the process is killed.</summary>
    public static async Task<FileStream> TakeTurnAsync(string file, CancellationToken cancel)
    {
        if (Path.GetDirectoryName(Path.GetFullPath(file)) is { } folder) Directory.CreateDirectory(folder);
        for (int tries = 0; ; tries++)
        {
            try
            {
                return new FileStream(file + ".preparing", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (tries < MostTries)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(200), cancel);
            }
        }
    }
}
