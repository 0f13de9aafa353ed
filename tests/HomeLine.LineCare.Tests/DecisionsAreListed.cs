using System.Reflection;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Scope;
using HomeLine.LineCare.Travel;

namespace HomeLine.LineCare.Tests;

public sealed class DecisionsAreListed
{
    public static TheoryData<Type> Codes => [typeof(DecisionCodes), typeof(RecordingCodes), typeof(LineCodes), typeof(OrderCodes), typeof(ScopeCodes), typeof(BeforeExcepting), typeof(Stay), typeof(AllergyNote)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void Every_code_has_its_row_with_something_to_do(Type list)
    {
        var rows = File.ReadLines(Path.Combine(Documents.Root, "docs", "reasons.md")).Where(line => line.StartsWith("| `", StringComparison.Ordinal)).ToList();
        var codes = list.GetFields(BindingFlags.Public | BindingFlags.Static).Where(field => field.IsLiteral).Select(field => (string)field.GetRawConstantValue()!).ToList();

        Assert.NotEmpty(codes);
        Assert.Equal(codes.Count, codes.Distinct().Count());
        Assert.All(codes, code => Assert.Contains(rows, row => row.StartsWith($"| `{code}` |", StringComparison.Ordinal) && row.Split('|')[3].Trim().Length > 0));
    }
}
