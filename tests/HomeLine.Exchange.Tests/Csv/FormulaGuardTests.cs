using CsCheck;
using HomeLine.Exchange.Csv;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>Formula characters follow OWASP's page on CSV injection, remembered, with NUL and full-width forms of our own.</summary>
public class FormulaGuardTests
{
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1+2")]
    [InlineData("@SUM(A1)")]
    [InlineData("\tx")]
    [InlineData("\rx")]
    [InlineData("\0x")]
    [InlineData("  =1+1")]
    [InlineData("\"=1+1")]
    [InlineData("'=1+1")]
    [InlineData(" ' =1+1")]
    [InlineData("＝1")]
    public void Text_that_begins_like_a_formula_is_written_behind_an_apostrophe(string text)
    {
        Assert.Equal("'" + text, FormulaGuard.Protect(text));
        Assert.Equal(text, FormulaGuard.Unprotect(FormulaGuard.Protect(text)));
    }

    [Theory]
    [InlineData("Anise Kettledown")]
    [InlineData("a=b")]
    [InlineData("555-0101")]
    [InlineData("")]
    public void Other_text_stays_as_it_is(string text) => Assert.Equal(text, FormulaGuard.Protect(text));

    [Fact]
    public void A_name_typed_with_an_apostrophe_in_front_is_read_as_typed() => Assert.Equal("'t Hooge", FormulaGuard.Unprotect("'t Hooge"));

    [Fact]
    public void Any_text_comes_back_whole() =>
        NastyText.Any.Sample(text => Assert.Equal(text, FormulaGuard.Unprotect(FormulaGuard.Protect(text))), iter: 10_000);

    [Fact]
    public void No_exported_cell_begins_like_a_formula() => NastyText.NotBlank.Sample(text =>
    {
        var roster = SeedFiles.Roster with { Patients = [.. SeedFiles.Roster.Patients.Select(one => one with { Name = text, Note = text })] };
        RosterFileSet files = RosterFolder.Write(roster, null, roster.Profile.FixedNow!.Value);
        var sheet = CsvParsing.Parse("patients.csv", files.Open("patients.csv").Bytes, ',', new ProblemList())!;
        Assert.All(sheet.Rows.SelectMany(row => row.Fields), field => Assert.False(LooksLikeFormula(field), field));
    }, iter: 60);

    /// <summary>Judged from the outside, as a spreadsheet would: leading spaces skipped, plain numbers are no formulas.</summary>
    private static bool LooksLikeFormula(string cell)
    {
        string seen = cell.TrimStart();
        return seen.Length > 0 && seen[0] is '=' or '+' or '-' or '@' or '＝' or '＋' or '－' or '＠'
            && !decimal.TryParse(seen, System.Globalization.NumberStyles.AllowLeadingSign | System.Globalization.NumberStyles.AllowDecimalPoint,
                System.Globalization.CultureInfo.InvariantCulture, out _);
    }
}
