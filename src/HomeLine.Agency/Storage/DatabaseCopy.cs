using Microsoft.Data.Sqlite;

namespace HomeLine.Agency.Storage;

/// <summary>A whole copy of a database file, taken while others may be writing to it.</summary>
public static class DatabaseCopy
{
    /// <summary>Copies it as it stands at one moment. The original is opened to read only.</summary>
    /// <param name="connection">The connection text of the original.</param>
    /// <param name="file">Where the copy goes; a file that is there already is not overwritten.</param>
    /// <returns>The connection text of the copy, or why there is none.</returns>
    public static Outcome<string> Take(string connection, string file)
    {
        string from = new SqliteConnectionStringBuilder(connection).DataSource;
        if (!File.Exists(from)) return new Refusal("copy-no-original", $"There is no database at {from}.", "Start the practice copy where the program is started, or name the file.");
        if (File.Exists(file)) return new Refusal("copy-there-already", "A copy is there already.", "End it first.");
        string copy = new SqliteConnectionStringBuilder { DataSource = file }.ToString();
        try
        {
            using var original = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = from, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
            using var target = new SqliteConnection(new SqliteConnectionStringBuilder(copy) { Pooling = false }.ToString());
            original.Open();
            target.Open();
            original.BackupDatabase(target);
            return copy;
        }
        catch (SqliteException cannot)
        {
            return new Refusal("copy-failed", $"The database could not be copied: {cannot.Message}", "Look whether the file is sound and there is room on the disk.");
        }
    }

    /// <summary>Closes what is still open of a copy, so that it can be deleted.</summary>
    public static void LetGo(string connection)
    {
        using var open = new SqliteConnection(connection);
        SqliteConnection.ClearPool(open);
    }
}
