namespace HomeLine.LineCare.Tests;

/// <summary>The lists of capabilities and of traps in docs/line-care.md, and the list of capabilities in docs/planning.md, name tests that exist.</summary>
public sealed class CapabilitiesAndTraps
{
    private static readonly Lazy<Dictionary<string, string>> Classes = new(() => Directory
        .EnumerateFiles(Path.Combine(Documents.Root, "tests"), "*.cs", SearchOption.AllDirectories)
        .GroupBy(path => Path.GetFileNameWithoutExtension(path), StringComparer.Ordinal)
        .ToDictionary(files => files.Key, files => string.Concat(files.Select(File.ReadAllText)), StringComparer.Ordinal));

    private static IEnumerable<string[]> Rows(params string[] headings) => Documents.Tables("line-care.md")
        .Where(row => headings.Contains(row.Heading) && row.Cells[0] is not ("capability" or "trap")).Select(row => row.Cells);

    private static List<string[]> Planning => [.. Documents.Tables("planning.md").Where(row => row.Heading == "9. Capabilities" && row.Cells[0] != "capability").Select(row => row.Cells)];

    [Fact]
    public void Every_test_named_exists() => Assert.All(
        Rows("Lines, lumens and clocks", "Orders, scope and safety gates", "Traps").Concat(Planning).SelectMany(cells => cells).SelectMany(Documents.Quoted).Where(name => name.Contains('.')),
        name => Assert.True(name.Split('.') is [var file, var method] && Classes.Value.TryGetValue(file, out var text) && text.Contains($" {method}(", StringComparison.Ordinal), name));

    [Fact]
    public void Every_capability_and_every_trap_names_a_test()
    {
        Assert.Equal(30, Rows("Lines, lumens and clocks").Count());
        Assert.Equal(15, Rows("Orders, scope and safety gates").Count());
        Assert.All(Rows("Lines, lumens and clocks", "Orders, scope and safety gates"), cells => Assert.Contains('`', cells[2]));
        Assert.InRange(Planning.Count, 30, 40);
        Assert.All(Planning, cells => Assert.Contains('`', cells[2]));
        Assert.All(Rows("Traps"), cells => Assert.Contains('`', cells[1]));
    }
}
