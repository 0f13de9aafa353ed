using System.Text;
using HomeLine.Exchange.Csv;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>Reading of RFC 4180 text: line ends, quotes, widths, limits.</summary>
public class CsvParsingTests
{
    private readonly ProblemList problems = new();

    [Theory]
    [InlineData("a,b\r\n1,2\r\n")]
    [InlineData("a,b\n1,2\n")]
    [InlineData("a,b\n1,2")]
    [InlineData("\uFEFFa,b\r\n1,2")]
    public void Line_ends_and_a_byte_order_mark_do_not_matter(string text)
    {
        CsvSheet sheet = Parse(text)!;
        Assert.Equal(["a", "b"], sheet.Header.Fields);
        Assert.Equal(["1", "2"], Assert.Single(sheet.Rows).Fields);
        Assert.False(problems.Any);
    }

    [Fact]
    public void A_row_after_a_field_with_line_breaks_keeps_its_own_line_number()
    {
        CsvSheet sheet = Parse("a,b\r\n\"x\r\ny\r\nz\",2\r\n\r\n3,4\r\n")!;
        Assert.Equal([2, 6], sheet.Rows.Select(row => row.Line));
        Assert.Equal("x\r\ny\r\nz", sheet.Rows[0].Fields[0]);
    }

    [Fact]
    public void Spaces_belong_to_the_field() => Assert.Equal([" 1 ", "2"], Assert.Single(Parse("a,b\n 1 ,2")!.Rows).Fields);

    [Fact]
    public void A_row_of_another_width_is_refused_with_its_line()
    {
        Assert.Empty(Parse("a,b\n1,2,3")!.Rows);
        RowProblem problem = Assert.Single(problems.InOrder());
        Assert.Equal(2, problem.Line);
        Assert.StartsWith("This row has 3 fields and the header has 2.", problem.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a,b\n1\",2")]
    [InlineData("a,b\n\"1\"x,2")]
    [InlineData("a,b\n\"1,2")]
    public void Broken_quoting_is_refused_with_its_line(string text)
    {
        Parse(text);
        Assert.Contains(problems.InOrder(), problem => problem.Line == 2);
    }

    [Fact]
    public void Bytes_that_are_not_UTF8_are_refused_with_their_line()
    {
        Assert.Null(CsvParsing.Parse("t.csv", new byte[] { (byte)'a', (byte)'\n', 0xE9, (byte)'\n' }, ',', problems));
        Assert.Equal(2, Assert.Single(problems.InOrder()).Line);
    }

    [Fact]
    public void An_empty_file_is_refused()
    {
        Assert.Null(Parse(""));
        Assert.True(problems.Any);
    }

    [Fact]
    public void A_file_over_five_megabytes_is_refused_before_it_is_read()
    {
        Assert.Null(CsvParsing.Parse("t.csv", new byte[ReadingLimits.FileBytes + 1], ',', problems));
        Assert.Contains("the most is 5,242,880", Assert.Single(problems.InOrder()).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_a_hundred_thousand_rows_are_refused()
    {
        var text = new StringBuilder("a\n");
        for (int i = 0; i <= ReadingLimits.Rows; i++) text.Append("1\n");
        Assert.Equal(ReadingLimits.Rows, Parse(text.ToString())!.Rows.Length);
        Assert.Equal(ReadingLimits.Rows + 2, Assert.Single(problems.InOrder()).Line);
    }

    [Fact]
    public void A_field_over_ten_thousand_characters_is_refused()
    {
        Assert.Empty(Parse("a\n" + new string('x', ReadingLimits.FieldCharacters + 1))!.Rows);
        Assert.Equal(2, Assert.Single(problems.InOrder()).Line);
    }

    private CsvSheet? Parse(string text) => CsvParsing.Parse("t.csv", Encoding.UTF8.GetBytes(text), ',', problems);
}
