namespace HomeLine.Planning.Tests.Routing.Published;

/// <summary>Folders of published sets. They are no part of this repository: HOMELINE_BENCHMARK_DATA names where they are, otherwise a folder shared/data above is looked for.</summary>
internal static class PublishedFolder
{
    public const string Absent = "The published instances are not here; HOMELINE_BENCHMARK_DATA can name their folder.";

    /// <summary>The folder of a set, or null.</summary>
    public static string? Of(string set)
    {
        IEnumerable<string> folders = Environment.GetEnvironmentVariable("HOMELINE_BENCHMARK_DATA") is { Length: > 0 } named
            ? [named]
            : Above(AppContext.BaseDirectory).Select(folder => Path.Combine(folder, "shared", "data"));
        return folders.Select(folder => Path.Combine(folder, set)).FirstOrDefault(Directory.Exists);
    }

    /// <summary>The distance column of a set's list, by instance; the first row of each counts.</summary>
    public static Dictionary<string, double> Stated(string folder) => File.ReadLines(Path.Combine(folder, "bks.csv"))
        .Skip(1)
        .Select(line => line.Split(','))
        .GroupBy(cells => cells[0])
        .ToDictionary(rows => rows.Key, rows => double.Parse(rows.First()[3], System.Globalization.CultureInfo.InvariantCulture));

    private static IEnumerable<string> Above(string folder)
    {
        for (DirectoryInfo? at = new(folder); at is not null; at = at.Parent) yield return at.FullName;
    }
}
