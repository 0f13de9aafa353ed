using System.Collections.Immutable;
using HomeLine.Agency.Sheets;
using HomeLine.Paper.Layout;
using HomeLine.Paper.Pdf;

namespace HomeLine.Paper;

/// <summary>
/// The sheet a family keeps at hand: whom to call, whose task is whose and on which day, what good and bad look like.
/// Meaning is carried by words, ticks and borders, so a grey copy loses nothing.
/// </summary>
public static class CareSheet
{
    public static byte[] ToPdf(CareSheetContent content, PaperSize size, Edition edition) =>
        PdfFile.Write(ToDocument(content, size, edition));

    public static PaperDocument ToDocument(CareSheetContent content, PaperSize size, Edition edition) => new()
    {
        Title = $"Care sheet {content.Number} for {content.PatientName}",
        Language = "en-US",
        Size = size,
        Typography = edition == Edition.LargePrint ? Typography.LargePrint : Typography.Normal,
        Closer = edition == Edition.LargePrint ? [] : Typography.NormalCloser,
        PrintedAt = content.PrintedAt,
        RunningHeader = $"Day {content.DayPhone}. Night {content.OnCallPhone}. Emergency {content.EmergencyNumber}.",
        Footer = $"{content.AgencyName}. Sheet {content.Number}.",
        Blocks = [.. Top(content), .. Tasks(content), .. Warnings(content), .. WhenToCall(content), .. Foot(content)],
    };

    private static IEnumerable<Block> Top(CareSheetContent content)
    {
        if (content.IsDemo)
            yield return new Paragraph(RichText.Strong(StandingTexts.PracticeSheet), TextRank.Small);
        yield return new Heading(1, $"Care sheet for {content.PatientName}");
        yield return new Paragraph(content.MainMessage, TextRank.Lead);
        yield return new ContactStrip(
        [
            new Contact("Call by day", content.DayPhone),
            new Contact("Call by night", content.OnCallPhone),
            new Contact("Emergency", content.EmergencyNumber),
        ]);
    }

    private static IEnumerable<Block> Tasks(CareSheetContent content)
    {
        if (content.Tasks.IsEmpty)
            yield break;
        yield return new Heading(2, $"Tasks. {StandingTexts.OnlyYourTasks}");
        if (content.Tasks.Any(task => task.IsTheirs))
            yield return new Paragraph(StandingTexts.CleanHands);
        yield return new Table(
            [new TableColumn("Yours?", 0.9), new TableColumn("Task", 2.2), new TableColumn("Who", 1.4), new TableColumn("When", 2.9)],
            [.. content.Tasks.Select(Row)]);
    }

    private static TableRow Row(SheetTask task) => new(
    [
        new TableCell(task.IsTheirs ? RichText.Strong("Yes") : "No", task.IsTheirs),
        new TableCell(task.Task),
        new TableCell(task.Whose),
        new TableCell(task.When),
    ]);

    private static IEnumerable<Block> Warnings(CareSheetContent content)
    {
        if (!content.Locks.IsEmpty)
            yield return new Callout("Do not use this line", [List(content.Locks)], Border.Heavy);
        if (!content.NotToUse.IsEmpty)
            yield return new Callout("Do not use these things", [List(content.NotToUse)], Border.Heavy);
    }

    private static IEnumerable<Block> WhenToCall(CareSheetContent content)
    {
        var emergency = Box($"Call {content.EmergencyNumber} now if:", content.NeverWait, Border.Banner);
        var callNow = Box("Call us now, day or night, if:", content.CallNow, Border.Heavy);
        var callToday = Box("Call us today if:", content.CallToday, Border.Thin);
        var good = Box("What good looks like", content.LooksGood, Border.Thin);
        if (content.CallNow.IsEmpty)
            return [emergency, new SideBySide(callToday, good)];
        return [new SideBySide(emergency, callNow), new SideBySide(callToday, good)];
    }

    private static IEnumerable<Block> Foot(CareSheetContent content)
    {
        yield return new Paragraph(RichText.Strong(StandingTexts.IfUnsure));
        yield return new Paragraph(StandingTexts.Caution);
        yield return new Paragraph(SheetLine(content));
    }

    private static string SheetLine(CareSheetContent content)
    {
        var printed = $"Sheet {content.Number}, printed {PlainDates.Moment(content.PrintedAt)}.";
        return content.Replaces is { } old
            ? $"{printed} Throw away sheet {old.Number} of {PlainDates.Day(old.PrintedOn)}."
            : printed;
    }

    private static Callout Box(string title, ImmutableArray<string> lines, Border border) => new(title, [List(lines)], border);

    private static BulletList List(ImmutableArray<string> lines) => new([.. lines.Select(line => (RichText)line)]);
}
