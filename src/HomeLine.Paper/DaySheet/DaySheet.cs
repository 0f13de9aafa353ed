using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Sheets;
using HomeLine.Paper.Layout;
using HomeLine.Paper.Pdf;

namespace HomeLine.Paper;

/// <summary>A nurse's day on paper, usable with no device: where, when, what to do and bring, and room to write. No diagnosis, no therapy.</summary>
public static class DaySheet
{
    public static byte[] ToPdf(DaySheetContent content, PaperSize size) => PdfFile.Write(ToDocument(content, size));

    public static PaperDocument ToDocument(DaySheetContent content, PaperSize size) => new()
    {
        Title = $"Day sheet of {content.NurseName}, {PlainDates.Day(content.Day)}",
        Language = "en-US",
        Size = size,
        Typography = Typography.Working,
        PrintedAt = content.PrintedAt,
        RunningHeader = $"{content.NurseName}, {PlainDates.Day(content.Day)}. {Numbers(content)}",
        Footer = $"Plan version {content.PlanVersion}, printed {PlainDates.Moment(content.PrintedAt)}. "
            + $"May be out of date: check version {content.PlanVersion}.",
        Blocks = [.. Top(content), .. content.Stops.SelectMany((stop, index) => StopAndHandIn(stop, index + 1))],
    };

    private static string Numbers(DaySheetContent content) =>
        $"Coordinator {content.CoordinatorPhone}. On call {content.OnCallPhone}. Emergency {content.EmergencyNumber}.";

    private static IEnumerable<Block> Top(DaySheetContent content)
    {
        if (content.IsDemo)
            yield return new Paragraph(RichText.Strong(StandingTexts.PracticeSheet), TextRank.Small);
        yield return new Heading(1, $"{PlainDates.Day(content.Day)}: {content.NurseName}");
        yield return new ContactStrip(
        [
            new Contact("Coordinator", content.CoordinatorPhone),
            new Contact("On call", content.OnCallPhone),
            new Contact("Emergency", content.EmergencyNumber),
        ]);
        yield return new Paragraph($"{content.AgencyName}. {Count(content.Stops)}, {content.DrivingMinutes} minutes of driving. "
            + "Dates are computed from recorded care and policy. Orders and clinical judgement come first.", TextRank.Small);
        if (content.Paid.Length > 0) yield return new Paragraph(content.Paid, TextRank.Small);
    }

    private static string Count(ImmutableArray<DayStop> stops) => stops.Length switch
    {
        0 => "No visits",
        1 => "1 visit",
        _ => string.Create(CultureInfo.InvariantCulture, $"{stops.Length} visits"),
    };

    private static IEnumerable<Block> StopAndHandIn(DayStop stop, int number)
    {
        yield return Stop(stop, number);
        if (stop.HandIn is not { } handIn) yield break;
        yield return new Callout(
            $"{PlainDates.Time(handIn.At)}  Hand in: {handIn.Drop}",
            [
                new Paragraph($"Specimens of {string.Join(", ", handIn.Patients)}, with the {PlainDates.Time(handIn.Courier)} collection. "
                    + $"{stop.TravelToHandIn} minutes’ drive before."),
            ]);
    }

    private static Callout Stop(DayStop stop, int number) => new(
        $"{number}. {PlainDates.Time(stop.Start)}  {stop.PatientName}",
        [
            new Paragraph(Times(stop)),
            new Paragraph(Place(stop)),
            .. Unusual(stop),
            new SideBySide(new KeepTogether([.. Work(stop)]), new WritingLines(["Arrived", "Left", "Notes", ""]), 0.64),
        ]);

    private static RichText Times(DayStop stop)
    {
        var told = $"Told {PlainDates.Range(stop.ToldFrom, stop.ToldTo)}";
        var zone = stop.OtherZoneRange.Length == 0 ? "" : $" ({stop.OtherZoneRange})";
        return new RichText([new Run(told + zone + ".", true), new Run($" {stop.Minutes} minutes there, {stop.TravelMinutesBefore} minutes’ drive before.")]);
    }

    private static IEnumerable<Block> Unusual(DayStop stop)
    {
        if (!stop.Unusual.IsEmpty)
            yield return new Callout("", [new FactLines([.. stop.Unusual.Select(line => new Fact("Unusual:", line))])], Border.Heavy);
    }

    private static RichText Place(DayStop stop)
    {
        var access = stop.AccessNotes.Length == 0 ? "" : $" Access: {stop.AccessNotes}";
        return new RichText([new Run($"{stop.Address}. Phone {stop.Phone}.", true), new Run(access)]);
    }

    private static IEnumerable<Block> Work(DayStop stop)
    {
        if (!stop.ToDo.IsEmpty)
            yield return new BulletList([.. stop.ToDo.Select(line => (RichText)line)]);
        // In small print: a kit is a long line, and a full day still goes on two pages.
        if (!stop.Bring.IsEmpty)
            yield return new Paragraph(new RichText([new Run("Bring:", true), new Run($" {string.Join("; ", stop.Bring)}.")]), TextRank.Small);
    }
}
