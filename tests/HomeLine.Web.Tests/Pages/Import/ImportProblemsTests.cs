using Bunit;
using HomeLine.Exchange.Csv;
using HomeLine.Web.Pages.Import;

namespace HomeLine.Web.Tests.Pages.Import;

public sealed class ImportProblemsTests : BunitContext
{
    [Fact]
    public void A_problem_is_shown_with_file_line_column_value_and_reason()
    {
        var shown = Render<ImportProblems>(with => with.Add(p => p.Problems,
            [new RowProblem("events.csv", 41, "performed", "03/04/2027", "Write dates as 2027-03-04.")]));

        string[] cells = [.. shown.FindAll("tbody td").Select(cell => cell.TextContent)];
        Assert.Equal(["events.csv", "41", "performed", "03/04/2027", "Write dates as 2027-03-04."], cells);
        Assert.Contains("nothing will be stored", shown.Find("h2").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_in_a_file_is_shown_as_text_and_never_as_mark_up()
    {
        var shown = Render<ImportProblems>(with => with.Add(p => p.Problems,
            [new RowProblem("patients.csv", 2, "name", "<script>alert(1)</script>", "Names hold no angle brackets.")]));

        Assert.Empty(shown.FindAll("script"));
        Assert.Contains("&lt;script&gt;", shown.Markup, StringComparison.Ordinal);
    }
}
