namespace HomeLine.Benchmarks.Classic;

/// <summary>Which files of a set's folder are instances and not solutions or documents.</summary>
internal static class InstanceFiles
{
    public static IEnumerable<string> Of(string folder) => Directory.Exists(folder)
        ? Directory.EnumerateFiles(folder)
            .Where(path => !path.Contains(".sol", StringComparison.Ordinal) && Path.GetExtension(path) is not (".md" or ".csv"))
            .Order(StringComparer.Ordinal)
        : throw new UnreadableFileException($"{folder}: no such folder");
}
