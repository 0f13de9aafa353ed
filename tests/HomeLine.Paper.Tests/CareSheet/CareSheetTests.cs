using HomeLine.Agency.Sheets;
using HomeLine.Paper.Layout;

namespace HomeLine.Paper.Tests;

public class CareSheetTests
{
    [Fact]
    public void The_typical_sheet_reads_as_approved() =>
        PaperSnapshot.Matches(PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal)));

    [Fact]
    public void A_sheet_with_a_locked_line_and_an_allergy_reads_as_approved() =>
        PaperSnapshot.Matches(PlainText.Of(CareSheet.ToDocument(SampleCareSheet.WithWarnings, PaperSize.Letter, Edition.LargePrint)));

    [Theory]
    [InlineData(PaperSize.Letter)]
    [InlineData(PaperSize.A4)]
    public void The_normal_edition_of_a_typical_sheet_is_one_page(PaperSize size)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical, size, Edition.Normal));
        Assert.Single(pdf.Pages);
    }

    [Theory]
    [InlineData(PaperSize.Letter)]
    [InlineData(PaperSize.A4)]
    public void The_normal_edition_has_14_point_text_and_nothing_under_12(PaperSize size)
    {
        // At least 12 points: American Printing House for the Blind; 14 for the sheet's own text is our own default.
        var sizes = Sizes(SampleCareSheet.Typical, size, Edition.Normal);
        Assert.Equal(12, sizes.Min());
        Assert.Contains(14, sizes);
    }

    [Theory]
    [InlineData(PaperSize.Letter)]
    [InlineData(PaperSize.A4)]
    public void Large_print_has_18_point_text_and_headings_of_20_and_22(PaperSize size)
    {
        // American Council of the Blind, large print guidelines of 2022.
        var sizes = Sizes(SampleCareSheet.WithWarnings, size, Edition.LargePrint);
        Assert.Equal(18, sizes.Min());
        Assert.Contains(20, sizes);
        Assert.Contains(22, sizes);
        Assert.True(Typography.LargePrint.LineSpacing >= 1.15);
        Assert.Equal(72, Typography.LargePrint.Margin);
    }

    [Theory]
    [InlineData(Edition.Normal)]
    [InlineData(Edition.LargePrint)]
    public void Every_page_says_whom_to_call_and_which_page_it_is(Edition edition)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.WithWarnings, PaperSize.Letter, edition));
        for (var page = 0; page < pdf.Pages.Count; page++)
        {
            var text = pdf.TextOf(page);
            Assert.Contains("555-0101", text, StringComparison.Ordinal);
            Assert.Contains("555-0102", text, StringComparison.Ordinal);
            Assert.Contains("911", text, StringComparison.Ordinal);
            Assert.Contains($"Page {page + 1} of {pdf.Pages.Count}", text, StringComparison.Ordinal);
            Assert.Contains("Sheet 4", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_numbers_stand_above_everything_but_the_name_and_the_main_message()
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal));
        var text = pdf.TextOf(0);
        Assert.True(text.IndexOf("Your nurse comes", StringComparison.Ordinal) < text.IndexOf("555-0101", StringComparison.Ordinal));
        Assert.True(text.IndexOf("555-0101", StringComparison.Ordinal) < text.IndexOf("Tasks.", StringComparison.Ordinal));
    }

    [Fact]
    public void The_dressing_is_the_nurses_task_and_not_ticked()
    {
        // The demonstration's patient 3: the spouse does the nutrition set and the flush, not the dressing.
        var text = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal));
        Assert.Contains("[ ] No | Change the dressing | Nurse | Tuesday, March 9", text, StringComparison.Ordinal);
        Assert.Contains("[x] Yes | Flush the line | You (spouse)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_which_sheet_to_throw_away_with_weekday_and_date()
    {
        var text = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal));
        Assert.Contains(
            "Sheet 4, printed Tuesday, March 9, 2027, 8:05 am. Throw away sheet 3 of Wednesday, March 3, 2027.", text,
            StringComparison.Ordinal);
        var first = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical with { Replaces = null }, PaperSize.Letter, Edition.Normal));
        Assert.DoesNotContain("Throw away", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_tasks_there_is_no_table_and_no_reminder_for_them()
    {
        var text = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical with { Tasks = [] }, PaperSize.Letter, Edition.Normal));
        Assert.DoesNotContain("Tasks.", text, StringComparison.Ordinal);
        Assert.DoesNotContain(StandingTexts.CleanHands, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_call_at_once_list_the_emergency_box_takes_the_whole_width()
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(SampleCareSheet.Typical with { CallNow = [] }, PaperSize.Letter, Edition.Normal));
        Assert.Contains("Call911nowif:", pdf.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Callusnow", pdf.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_demonstration_says_that_it_is_practice()
    {
        var real = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical with { IsDemo = false }, PaperSize.Letter, Edition.Normal));
        Assert.DoesNotContain("Practice sheet", real, StringComparison.Ordinal);
        Assert.Contains("Practice sheet: all people are invented.",
            PlainText.Of(CareSheet.ToDocument(SampleCareSheet.Typical, PaperSize.Letter, Edition.Normal)), StringComparison.Ordinal);
    }

    private static List<double> Sizes(HomeLine.Agency.Sheets.CareSheetContent content, PaperSize size, Edition edition)
    {
        using var pdf = new ReadPdf(CareSheet.ToPdf(content, size, edition));
        return [.. pdf.Pages.SelectMany(page => page.Letters).Select(letter => Math.Round(letter.PointSize, 2)).Distinct().Order()];
    }
}
