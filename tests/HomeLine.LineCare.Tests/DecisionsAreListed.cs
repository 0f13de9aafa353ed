using System.Reflection;

namespace HomeLine.LineCare.Tests;

public sealed class DecisionsAreListed
{
    [Fact]
    public void Every_decision_code_has_its_row_with_something_to_do()
    {
        var rows = File.ReadLines(Path.Combine(Root(), "docs", "reasons.md")).Where(line => line.StartsWith("| `", StringComparison.Ordinal)).ToList();
        var codes = typeof(DecisionCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (string)field.GetRawConstantValue()!).ToList();

        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Contains(rows, row => row.StartsWith($"| `{code}` |", StringComparison.Ordinal) && row.Split('|')[3].Trim().Length > 0));
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HomeLine.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The solution's folder was not found above the tests.");
    }
}
