namespace HomeLine.Architecture.Tests;

/// <summary>The repository's files as people wrote them: nothing built, stored or ignored.</summary>
internal static class Repository
{
    private static readonly string[] NotOurs = [".git", ".vs", ".idea", "artifacts", "bin", "obj", "data", "TestResults", "__mismatch__"];
    private static readonly string[] BinaryEndings = [".png", ".pdf", ".ttf", ".ico", ".woff2", ".jpg", ".zip"];
    private static readonly string[] CodeEndings = [".cs", ".razor", ".css", ".js"];

    public static string Root { get; } = FindRoot();

    /// <summary>Paths from the root, with forward slashes.</summary>
    public static IReadOnlyList<string> Files { get; } = [.. Walk(Root).Order(StringComparer.Ordinal)];

    public static IEnumerable<string> TextFiles => Files.Where(path => !BinaryEndings.Contains(Path.GetExtension(path)));

    /// <summary>Code, pages, styles and scripts written by hand: no generated migrations, no vendored libraries.</summary>
    public static IEnumerable<string> WrittenCode(string under) => Files.Where(path =>
        path.StartsWith(under, StringComparison.Ordinal)
        && CodeEndings.Contains(Path.GetExtension(path))
        && !path.Contains("/Migrations/", StringComparison.Ordinal)
        && !path.Contains("/vendor/", StringComparison.Ordinal));

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    public static bool Has(string path) => Path.Exists(Path.Combine(Root, path));

    private static IEnumerable<string> Walk(string folder)
    {
        IEnumerable<string> here = Directory.EnumerateFiles(folder)
            .Where(file => Path.GetFileName(file) is var name && name != ".git" && !name.Contains(".db", StringComparison.Ordinal))
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'));
        IEnumerable<string> below = Directory.EnumerateDirectories(folder)
            .Where(child => !NotOurs.Contains(Path.GetFileName(child)))
            .SelectMany(Walk);
        return here.Concat(below);
    }

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "HomeLine.sln")))
                return folder.FullName;
        throw new InvalidOperationException("HomeLine.sln is not above the test's own folder");
    }
}
