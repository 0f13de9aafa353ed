using HomeLine.Benchmarks.Classic.Revealed;
using HomeLine.Benchmarks.Classic.Supplies;
using HomeLine.Benchmarks.Classic.Unified;
using HomeLine.Benchmarks.Classic.Unloading;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Opens an instance file of any known format.</summary>
internal static class AnyFile
{
    public static readonly string[] Formats = ["solomon", "cordeau", "homecare", "technicians", "unified", "unloading", "revealed", "supplies"];

    /// <exception cref="UnreadableFileException">The file cannot be read, or its format is unknown.</exception>
    public static Instance Open(string path, string? format, Distance? distance, string? other = null)
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
                "technicians" => TechnicianFile.Read(path, text, other, distance ?? Distance.Exact),
                "unified" => new UnifiedInstance(UnifiedFile.Read(name, text)),
                "unloading" => new UnloadingInstance(UnloadingFile.Read(name, text)),
                "revealed" => RevealedFile.Read(path, text, other, distance ?? Distance.Exact),
                "supplies" => new SupplyInstance(SupplyFile.Read(name, text)),
                var odd => throw new UnreadableFileException($"unknown format '{odd}'; known: {string.Join(", ", Formats)}"),
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
        UnifiedFile.Looks(text) ? "unified"
        : UnloadingFile.Looks(text) ? "unloading"
        : CrewFile.Looks(text) ? "homecare"
        : SupplyFile.Looks(text) ? "supplies"
        : SolomonFile.Looks(text) ? "solomon"
        : RevealedFile.Looks(text) ? "revealed"
        : CordeauFile.Looks(text) ? "cordeau"
        : TechnicianFile.Looks(text) ? "technicians"
        : throw new UnreadableFileException($"no known format looks like this; name one with --format ({string.Join(", ", Formats)})");
}
