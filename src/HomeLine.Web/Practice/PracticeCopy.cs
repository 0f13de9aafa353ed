using HomeLine.Agency;
using HomeLine.Agency.Storage;

namespace HomeLine.Web.Practice;

/// <summary>
/// <c>practice</c> serves a copy of the agency's database under an address of its own, to rehearse a day on. The copy is taken at the start and thrown away at
/// the end; nothing leaves it: no mail, no sheet, no change of the real week (docs/decisions/0014-a-practice-copy.md).
/// </summary>
public sealed class PracticeCopy : IDisposable
{
    /// <summary>The setting that says that this is a practice copy.</summary>
    public const string Setting = "Practice:On";

    private readonly DirectoryInfo folder;

    private PracticeCopy(DirectoryInfo folder, string connection)
    {
        this.folder = folder;
        Connection = connection;
    }

    /// <summary>The connection text of the copy.</summary>
    public string Connection { get; }

    /// <summary>Whether these arguments ask for a practice copy.</summary>
    public static bool IsAsked(string[] args) => args is ["practice", ..];

    /// <summary>Takes the copy, or says why there is none.</summary>
    /// <param name="settings">The program's settings: which database.</param>
    /// <param name="startedIn">Where the program was started; the default database lies there.</param>
    public static Outcome<PracticeCopy> Take(IConfiguration settings, string startedIn)
    {
        if (!string.Equals(settings["Database:Provider"] ?? "sqlite", "sqlite", StringComparison.OrdinalIgnoreCase))
            return new Refusal("practice-needs-file", "A practice copy is taken of a database file only.", $"Restore last night's backup into a database of its own, and start the program on that with {Setting}=true.");
        string original = settings.GetConnectionString("Agency") is { Length: > 0 } named ? named : $"Data Source={Path.Combine(startedIn, "data", "homeline.db")}";
        DirectoryInfo folder = Directory.CreateTempSubdirectory("homeline-practice-");
        Outcome<string> copy = DatabaseCopy.Take(original, Path.Combine(folder.FullName, "practice.db"));
        if (copy.Succeeded) return new PracticeCopy(folder, copy.Value);
        folder.Delete(recursive: true);
        return copy.Refusal!;
    }

    /// <summary>What the program is told instead of its usual settings.</summary>
    public IEnumerable<KeyValuePair<string, string?>> Settings() =>
    [
        new(Setting, "true"),
        new("ConnectionStrings:Agency", Connection),
        new("Mail:Host", ""),
    ];

    /// <summary>Throws the copy away.</summary>
    public void Dispose()
    {
        DatabaseCopy.LetGo(Connection);
        if (folder.Exists) folder.Delete(recursive: true);
    }
}
