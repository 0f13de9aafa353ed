using HomeLine.Paper.Layout;
using UglyToad.PdfPig.Graphics.Operations;

namespace HomeLine.Paper.Tests;

public class BlackAndWhiteTests
{
    [Theory]
    [InlineData(Edition.Normal)]
    [InlineData(Edition.LargePrint)]
    public void A_care_sheet_uses_no_colour(Edition edition)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.WithWarnings, PaperSize.Letter, edition));
        Assert.All(pdf.Pages, page => AssertGrey(page.Operations));
    }

    [Fact]
    public void A_day_sheet_uses_no_colour()
    {
        using var pdf = new ReadPdf(DaySheet.ToPdf(SampleDaySheet.SixStops, PaperSize.A4));
        Assert.All(pdf.Pages, page => AssertGrey(page.Operations));
    }

    /// <summary>Every colour operator of ISO 32000-1, table 74: grey, or red, green and blue alike.</summary>
    private static void AssertGrey(IReadOnlyList<IGraphicsStateOperation> operations)
    {
        string[] colourOperators = ["g", "G", "rg", "RG", "k", "K", "cs", "CS", "sc", "SC", "scn", "SCN", "sh"];
        var used = operations.Where(operation => colourOperators.Contains(operation.Operator)).ToList();
        Assert.NotEmpty(used);
        Assert.All(used, operation => Assert.True(IsGrey(operation), operation.ToString()));
    }

    private static bool IsGrey(IGraphicsStateOperation operation) => operation switch
    {
        SetNonStrokeColorDeviceGray or SetStrokeColorDeviceGray => true,
        SetNonStrokeColorDeviceRgb fill => fill.R == fill.G && fill.G == fill.B,
        SetStrokeColorDeviceRgb line => line.R == line.G && line.G == line.B,
        _ => false,
    };
}
