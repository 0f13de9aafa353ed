using System.Reflection;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Tests.Plans;

/// <summary>Every code a reader may meet is explained.</summary>
public sealed class ReasonCodeTests
{
    [Fact]
    public void Every_code_has_a_row_with_meaning_and_action()
    {
        string[] rows = [.. File.ReadLines(Path.Combine(Root(), "docs", "reasons.md")).TakeWhile(r => r != "## What a licensed person has to decide")];
        Assert.All(ReasonCode.All, code =>
        {
            string row = Assert.Single(rows, r => r.StartsWith($"| `{code}` |", StringComparison.Ordinal));
            Assert.All(row.Split('|', StringSplitOptions.TrimEntries)[2..4], cell => Assert.NotEmpty(cell));
        });
    }

    [Fact]
    public void The_list_of_codes_holds_every_code_once()
    {
        string[] constants =
        [
            .. typeof(ReasonCode).GetFields(BindingFlags.Public | BindingFlags.Static)
                .Where(f => f.IsLiteral).Select(f => (string)f.GetRawConstantValue()!),
        ];
        Assert.Equal(constants.Order(StringComparer.Ordinal), ReasonCode.All.Order(StringComparer.Ordinal));
    }

    private static string Root()
    {
        DirectoryInfo? here = new(AppContext.BaseDirectory);
        while (here is not null && !File.Exists(Path.Combine(here.FullName, "HomeLine.sln"))) here = here.Parent;
        return here?.FullName ?? throw new InvalidOperationException("The repository's root was not found.");
    }
}
