using System.Globalization;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.RedFlags;

namespace HomeLine.LineCare.Tests.Policy;

/// <summary>docs/line-care.md and the shipped policy say the same, and every row of our table of published figures has its place.</summary>
public sealed class DocumentAndPolicy
{
    private const string Table = "HOMELINE_FIGURES_TABLE";

    private static readonly List<(string Heading, string[] Cells)> Rows = [.. Documents.Tables("line-care.md").Where(row => row.Cells[0] is not ("rows" or "rule"))];

    private static readonly List<(string[] Ids, string Became)> Sources =
        [.. Rows.Where(row => row.Cells.Length == 3 && char.IsAsciiLetterUpper(row.Cells[0][0]) && row.Cells[0].Contains('-')).Select(row => (Spread(row.Cells[0]), row.Cells[2]))];

    [Fact]
    public void Every_rule_of_the_policy_has_its_row_with_the_same_value()
    {
        var written = Rows.Where(row => row.Heading == "Every rule").ToDictionary(row => row.Cells[0].Trim('`'), row => row.Cells[1]);

        Assert.All(PolicyBook.Default.Rules, rule => Assert.Equal(
            string.Create(CultureInfo.InvariantCulture, $"{rule.Value:0.####} {rule.Unit}"), written.GetValueOrDefault(rule.Id, $"no row for {rule.Id}")));
        Assert.Empty(written.Keys.Except(PolicyBook.Default.Rules.Select(rule => rule.Id)));
    }

    [Fact]
    public void Every_source_became_a_rule_a_question_a_code_or_a_reason_why_not()
    {
        var rules = PolicyBook.Default.Rules.Select(rule => rule.Id).ToHashSet();
        var questions = SymptomScreen.Questions(ScreenContext.Unknown).Select(question => question.Id).ToHashSet();
        var codes = Documents.Tables("reasons.md").Select(row => row.Cells[0].Trim('`')).ToHashSet();

        Assert.NotEmpty(Sources);
        Assert.All(Sources, source =>
        {
            var named = Documents.Quoted(source.Became).ToList();
            if (source.Became.StartsWith("question ", StringComparison.Ordinal)) Assert.Subset(questions, named.ToHashSet());
            else if (source.Became.StartsWith("code ", StringComparison.Ordinal)) Assert.Subset(codes, named.ToHashSet());
            else Assert.Subset(rules, named.ToHashSet());
            Assert.True(named.Count > 0 || source.Became.StartsWith("out of scope: ", StringComparison.Ordinal) || source.Became.StartsWith("ledger: ", StringComparison.Ordinal), source.Became);
        });
    }

    [Fact]
    public void Every_row_of_our_table_stands_exactly_once() =>
        Assert.Equal(OurRows().Order(StringComparer.Ordinal), Sources.SelectMany(source => source.Ids).Order(StringComparer.Ordinal));

    [Fact]
    public void Our_list_of_rows_is_that_of_the_table_itself()
    {
        var path = Environment.GetEnvironmentVariable(Table);
        Assert.SkipUnless(File.Exists(path), $"{Table} names no file: the table of published figures lies outside this repository.");
        var rows = File.ReadLines(path!).Skip(1).Select(line => line.Split(',')[0]).Where(id => id.Length is 6 && id[2] == '-');

        Assert.Equal(rows.Order(StringComparer.Ordinal), OurRows().Order(StringComparer.Ordinal));
    }

    private static string[] OurRows() => File.ReadAllLines(Path.Combine(Documents.Root, "tests", "HomeLine.LineCare.Tests", "Sources", "rows.txt"));

    /// <summary><c>AB-001, AB-003 to AB-005</c> as single rows.</summary>
    private static string[] Spread(string cell) => [.. cell.Split(", ").SelectMany(part => part.Split(" to ") is [var from, var to]
        ? Enumerable.Range(Number(from), Number(to) - Number(from) + 1).Select(n => string.Create(CultureInfo.InvariantCulture, $"{from[..3]}{n:000}"))
        : [part])];

    private static int Number(string id) => int.Parse(id.AsSpan(3), CultureInfo.InvariantCulture);
}
