using HomeLine.Agency.Visits;
using HomeLine.Paper.Layout;
using NodaTime;

namespace HomeLine.Paper.Tests;

/// <summary>The summary of a signed visit says what the record says, all of it, on numbered pages. Invented data.</summary>
public class VisitSummaryTests
{
    private static readonly VisitSummaryContent Content = new()
    {
        AgencyName = "Brackenmoth Home Infusion",
        RecordId = "V7",
        Reader = SummaryReader.Prescriber,
        PatientName = "Larkspur Cogglewick",
        Day = new LocalDate(2027, 3, 9),
        PrintedAt = new LocalDateTime(2027, 3, 9, 12, 5),
        DayPhone = "555-0170",
        OnCallPhone = "555-0171",
        EmergencyNumber = "911",
        IsDemo = true,
        Warnings = ["P12-1: the tip may have moved. No infusion until a licensed person has decided."],
        Sections =
        [
            new SummarySection("Visit", [new SummaryLine("Nurse", "Juniper Brasslock, RN"), new SummaryLine("Start", "08:10")]),
            new SummarySection("Care", [new SummaryLine("Dressing, PICC", "Done, film, securement changed."), new SummaryLine("Connector A", "Not done. Another reason: none in the bag.")]),
            new SummarySection("Notes", [new SummaryLine("", "tape rolled at the edge")]),
        ],
    };

    [Theory]
    [InlineData(PaperSize.Letter, SummaryReader.Prescriber)]
    [InlineData(PaperSize.A4, SummaryReader.Prescriber)]
    [InlineData(PaperSize.Letter, SummaryReader.Patient)]
    public void Every_word_of_the_record_is_on_the_paper(PaperSize size, SummaryReader reader)
    {
        using var pdf = new ReadPdf(VisitSummary.ToPdf(Content with { Reader = reader }, size));
        string text = WithoutSpaces(pdf.Text);
        foreach (SummarySection section in Content.Sections)
        {
            Assert.Contains(WithoutSpaces(section.Title), text, StringComparison.Ordinal);
            foreach (SummaryLine line in section.Lines)
            {
                Assert.Contains(WithoutSpaces(line.Label), text, StringComparison.Ordinal);
                Assert.Contains(WithoutSpaces(line.Text), text, StringComparison.Ordinal);
            }
        }

        Assert.All(Content.Warnings, warning => Assert.Contains(WithoutSpaces(warning), text, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_page_says_which_record_and_which_page_of_how_many()
    {
        VisitSummaryContent tall = Content with { Sections = [.. Enumerable.Range(0, 40).Select(n => new SummarySection($"Section {n}", Content.Sections[1].Lines))] };
        using var pdf = new ReadPdf(VisitSummary.ToPdf(tall, PaperSize.Letter));
        Assert.True(pdf.Pages.Count > 1);
        for (var page = 0; page < pdf.Pages.Count; page++)
        {
            Assert.Contains($"Page {page + 1} of {pdf.Pages.Count}", pdf.TextOf(page), StringComparison.Ordinal);
            Assert.Contains("Record V7", pdf.TextOf(page), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_copy_names_no_patient_in_its_title_and_says_that_it_may_grow_old()
    {
        PaperDocument paper = VisitSummary.ToDocument(Content, PaperSize.Letter);
        Assert.DoesNotContain("Larkspur", paper.Title, StringComparison.Ordinal);
        Assert.Contains("makes this copy old", paper.Footer, StringComparison.Ordinal);
        Assert.Contains("all people are invented", PlainText.Of(paper), StringComparison.Ordinal);
    }

    private static string WithoutSpaces(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
}
