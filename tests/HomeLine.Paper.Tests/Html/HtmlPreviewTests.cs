using System.Xml.Linq;
using HomeLine.Agency.Sheets;
using HomeLine.Paper.Html;
using HomeLine.Paper.Layout;

namespace HomeLine.Paper.Tests;

public class HtmlPreviewTests
{
    [Fact]
    public void The_preview_is_well_formed_with_one_main_heading_and_scoped_table_headers()
    {
        var article = XElement.Parse(Preview("Clover Zigzagby"));
        Assert.Equal("en-US", article.Attribute("lang")?.Value);
        Assert.Single(article.Descendants("h1"));
        Assert.Equal(4, article.Descendants("th").Count(header => header.Attribute("scope")?.Value == "col"));
        Assert.All(article.Descendants("ul"), list => Assert.All(list.Elements(), item => Assert.Equal("li", item.Name.LocalName)));
    }

    [Fact]
    public void Text_is_never_taken_for_markup()
    {
        var html = Preview("<script>alert(1)</script> \" & '");
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void It_brings_no_style_and_no_script_of_its_own()
    {
        var html = Preview("Clover Zigzagby");
        Assert.DoesNotContain("style", html, StringComparison.Ordinal);
        Assert.DoesNotContain("onclick", html, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_the_same_as_the_paper()
    {
        var words = XElement.Parse(Preview("Clover Zigzagby")).Value;
        Assert.All(StandingTexts.NeverWait, line => Assert.Contains(line, words, StringComparison.Ordinal));
        Assert.Contains("Throw away sheet 3", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_sheet_previews_too()
    {
        var article = XElement.Parse(HtmlPreview.Of(DaySheet.ToDocument(SampleDaySheet.SixStops, PaperSize.Letter)));
        Assert.Contains("Oxlip Snufflebrook", article.Value, StringComparison.Ordinal);
    }

    private static string Preview(string name) =>
        HtmlPreview.Of(CareSheet.ToDocument(SampleCareSheet.Typical with { PatientName = name }, PaperSize.Letter, Edition.Normal));
}
