namespace HomeLine.Benchmarks.Classic;

/// <summary>Opens an instance file of any known format.</summary>
internal static class AnyFile
{
    public static readonly string[] Formats = ["solomon", "cordeau", "homecare", "technicians"];

    /// <exception cref="UnreadableFileException">The file cannot be read, or its format is unknown.</exception>
    public static Instance Open(string path, string? format, Distance? distance, string? crew = null)
    {
        string text = Text(path);
        string name = Path.GetFileNameWithoutExtension(path);
        try
        {
            return (format ?? Guess(text)) switch
            {
                "solomon" => SolomonFile.Read(name, text, distance ?? Distance.Tenths),
                "cordeau" => CordeauFile.Read(name, text, distance ?? Distance.Exact),
                "homecare" => CrewFile.Read(name, text),
                "technicians" => TechnicianFile.Read(path, text, crew, distance ?? Distance.Exact),
                var other => throw new UnreadableFileException($"unknown format '{other}'; known: {string.Join(", ", Formats)}"),
            };
        }
        catch (UnreadableFileException fault)
        {
            throw new UnreadableFileException($"{path}: {fault.Message}", fault);
        }
    }

    public static string Text(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UnreadableFileException($"{path}: cannot be read ({fault.Message})", fault);
        }
    }

    private static string Guess(string text) =>
        SolomonFile.Looks(text) ? "solomon"
        : CordeauFile.Looks(text) ? "cordeau"
        : TechnicianFile.Looks(text) ? "technicians"
        : CrewFile.Looks(text) ? "homecare"
        : throw new UnreadableFileException($"no known format looks like this; name one with --format ({string.Join(", ", Formats)})");
}
