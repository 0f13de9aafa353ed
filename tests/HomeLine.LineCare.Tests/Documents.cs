namespace HomeLine.LineCare.Tests;

/// <summary>The repository's own papers, as tests read them.</summary>
internal static class Documents
{
    public static string Root { get; } = Find();

    /// <summary>Cells of every table row of a document, by the heading the row stands under.</summary>
    public static IEnumerable<(string Heading, string[] Cells)> Tables(string document)
    {
        var heading = "";
        foreach (var line in File.ReadLines(Path.Combine(Root, "docs", document)))
            if (line.StartsWith('#')) heading = line.TrimStart('#', ' ');
            else if (line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| ---", StringComparison.Ordinal))
                yield return (heading, [.. line.Trim('|', ' ').Split(" | ").Select(cell => cell.Trim())]);
    }

    /// <summary>What stands between back-ticks.</summary>
    public static IEnumerable<string> Quoted(string text) => text.Split('`').Where((_, index) => index % 2 == 1);

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HomeLine.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The solution's folder was not found above the tests.");
    }
}
