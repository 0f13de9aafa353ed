using System.Text;
using HomeLine.Agency.Sheets;
using HomeLine.Paper.Layout;

namespace HomeLine.Paper.Tests;

/// <summary>Names and notes come from people and imports: whatever they hold is printed as text, or visibly not, and never does anything.</summary>
public class HostileTextTests
{
    [Theory]
    [InlineData("Clover )(\\ Zigzagby")]
    [InlineData("100 % <Clover> & \"Zigzagby\"")]
    [InlineData("Zoë Müller-Łukasiewicz Ñandú")]
    [InlineData("Дитяна Жукова")]
    [InlineData("Nguyễn Thị Hường")]
    [InlineData("/JS (app.alert) /OpenAction javascript:alert(1)")]
    [InlineData("endstream endobj trailer %%EOF")]
    [InlineData("<?xpacket end=\"w\"?>")]
    [InlineData("stream <?xpacket begin=\"\" ]]> &&&&&&&&&&&&&&&&&&&&&&&&&&&&&&&&&&")]
    public void A_name_is_read_back_as_it_was_given(string name)
    {
        using var pdf = new ReadPdf(Write(name));
        Assert.Contains(WithoutSpaces($"Care sheet for {name}"), pdf.Text, StringComparison.Ordinal);
        Assert.Equal($"Care sheet 4 for {name}", pdf.Title);
    }

    [Fact]
    public void A_very_long_name_is_broken_inside_the_word_and_loses_no_letter()
    {
        var name = "Grumbleheath" + string.Concat(Enumerable.Repeat("Thimblegarth", 20));
        using var pdf = new ReadPdf(Write(name));
        Assert.Contains(name, pdf.Text, StringComparison.Ordinal);
        Assert.All(pdf.Pages, page => Assert.All(page.Letters, letter => Assert.InRange(letter.EndBaseLine.X, 0, page.Width - 30)));
    }

    [Fact]
    public void A_very_long_name_in_two_byte_letters_still_has_room_in_the_metadata()
    {
        var name = string.Concat(Enumerable.Repeat("Жукова", 60));
        using var pdf = new ReadPdf(Write(name));
        Assert.Contains(name, pdf.Text, StringComparison.Ordinal);
        Assert.Contains(name, pdf.Xmp, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("زهرة", 4)]
    [InlineData("שושנה", 5)]
    [InlineData("Clover 🍀 Zigzagby", 1)]
    [InlineData("花子", 2)]
    public void Letters_the_fonts_lack_become_a_visible_sign_and_the_sheet_says_so(string name, int missing)
    {
        using var pdf = new ReadPdf(Write(name));
        Assert.Contains(new string('\uFFFD', missing), pdf.Text, StringComparison.Ordinal);
        Assert.Contains("Someletterscannotbeprintedhere.", pdf.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_without_missing_letters_does_not_speak_of_them()
    {
        using var pdf = new ReadPdf(Write("Clover Zigzagby"));
        Assert.DoesNotContain("Someletters", pdf.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_and_direction_marks_leave_no_trace()
    {
        using var pdf = new ReadPdf(Write("Clover\u0000\u0007\tZig\u202Ezag\u200Bby\u2028\r\nEnd"));
        Assert.Contains("CaresheetforCloverZigzagbyEnd", pdf.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_half_of_a_character_does_not_stop_the_print()
    {
        using var pdf = new ReadPdf(Write("Clover \uD83C Zigzagby"));
        Assert.Contains("\uFFFD", pdf.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/JS")]
    [InlineData("/JavaScript")]
    [InlineData("/Launch")]
    [InlineData("/OpenAction")]
    [InlineData("/AA")]
    [InlineData("/EmbeddedFile")]
    [InlineData("/URI")]
    public void The_file_holds_nothing_active(string key)
    {
        var plain = Encoding.Latin1.GetString(Write("javascript:alert(1) Clover"));
        Assert.DoesNotMatch($"{key}\\b", plain);
    }

    [Fact]
    public void A_table_cell_longer_than_a_page_goes_on_over_the_pages()
    {
        var content = SampleCareSheet.Typical with
        {
            Tasks = [new SheetTask(string.Join(' ', Enumerable.Range(1, 900).Select(word => $"w{word}")), "Nurse", false, "Tuesday, March 9")],
        };
        using var pdf = new ReadPdf(CareSheet.ToPdf(content, PaperSize.Letter, Edition.Normal));
        Assert.True(pdf.Pages.Count > 1);
        Assert.Contains("w900", pdf.Text, StringComparison.Ordinal);
        Assert.Contains("Yours?TaskWhoWhen", WithoutSpaces(pdf.TextOf(1)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_longer_than_a_page_loses_nothing()
    {
        var content = SampleCareSheet.Typical with { NeverWait = [.. Enumerable.Range(1, 120).Select(line => $"Sign number {line} of many.")] };
        using var pdf = new ReadPdf(CareSheet.ToPdf(content, PaperSize.Letter, Edition.LargePrint));
        Assert.All(Enumerable.Range(1, 120), line => Assert.Contains($"Signnumber{line}ofmany.", pdf.Text, StringComparison.Ordinal));
    }

    private static byte[] Write(string name) =>
        CareSheet.ToPdf(SampleCareSheet.Typical with { PatientName = name }, PaperSize.Letter, Edition.Normal);

    private static string WithoutSpaces(string text) => text.Replace(" ", "", StringComparison.Ordinal);
}
