using HomeLine.Agency.Sheets;
using HomeLine.Agency.Visits;
using HomeLine.Paper.Layout;
using HomeLine.Paper.Pdf;

namespace HomeLine.Paper;

/// <summary>A signed visit on paper, for the prescriber or for the patient: the same sections as on the page, word for word.</summary>
public static class VisitSummary
{
    public static byte[] ToPdf(VisitSummaryContent content, PaperSize size) => PdfFile.Write(ToDocument(content, size));

    public static PaperDocument ToDocument(VisitSummaryContent content, PaperSize size) => new()
    {
        Title = $"Visit {content.RecordId}, {PlainDates.Day(content.Day)}",
        Language = "en-US",
        Size = size,
        Typography = content.Reader == SummaryReader.Patient ? Typography.Normal : Typography.Working,
        PrintedAt = content.PrintedAt,
        RunningHeader = $"{content.PatientName}, visit {content.RecordId}, {PlainDates.Day(content.Day)}",
        Footer = $"Record {content.RecordId}, printed {PlainDates.Moment(content.PrintedAt)}. A later amendment makes this copy old.",
        Blocks = [.. Top(content), .. content.Sections.Select(Section)],
    };

    private static IEnumerable<Block> Top(VisitSummaryContent content)
    {
        if (content.IsDemo) yield return new Paragraph(RichText.Strong(StandingTexts.PracticeSheet), TextRank.Small);
        yield return new Heading(1, content.Reader == SummaryReader.Patient ? $"Your nurse’s visit, {PlainDates.Day(content.Day)}" : $"Visit summary: {content.PatientName}");
        yield return new Paragraph($"{content.AgencyName}. {PlainDates.Day(content.Day)}. Record {content.RecordId}.");
        yield return new ContactStrip([new Contact("By day", content.DayPhone), new Contact("By night", content.OnCallPhone), new Contact("Emergency", content.EmergencyNumber)]);
        if (!content.Warnings.IsEmpty)
            yield return new Callout("Read first", [new BulletList([.. content.Warnings.Select(w => (RichText)w)])], Border.Heavy);
        yield return new Paragraph(content.Reader == SummaryReader.Patient
            ? StandingTexts.Caution
            : "Windows are computed from recorded care and the agency’s policy. Orders and clinical judgement come first.", TextRank.Small);
    }

    private static Callout Section(SummarySection section) => new(section.Title, [.. Lines(section)]);

    private static IEnumerable<Block> Lines(SummarySection section)
    {
        if (section.Lines.All(l => l.Label.Length == 0))
            yield return section.Lines.Length == 1 ? new Paragraph(section.Lines[0].Text) : new BulletList([.. section.Lines.Select(l => (RichText)l.Text)]);
        else
            yield return new FactLines([.. section.Lines.Select(l => new Fact(WithColon(l.Label), l.Text))]);
    }

    private static string WithColon(string label) => label.Length == 0 || label[^1] is ':' or '?' or '.' ? label : $"{label}:";
}
