using System.Security.Cryptography;
using System.Text;
using HomeLine.Paper.Layout;
using HomeLine.Paper.Layout.Typesetting;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace HomeLine.Paper.Pdf;

/// <summary>Writes a document as a tagged PDF with embedded fonts. No script, no links, no attachments.</summary>
public static class PdfFile
{
    private const string MissingLettersNote = "Some letters cannot be printed here. They show as \uFFFD. Ask us if a word is not clear.";

    public static byte[] Write(PaperDocument document)
    {
        using var measure = new PdfTextMeasure();
        var whole = WithNoteOnMissingLetters(document, measure);
        var pages = Set(whole, measure);
        using var file = NewFile(whole, measure);
        using (var canvas = new PdfCanvas(file, measure))
        {
            for (var page = 0; page < pages.Pages.Length; page++)
            {
                canvas.AddPage(whole.Size.Width(), whole.Size.Height());
                pages.Draw(canvas, page);
            }
        }

        using var stream = new MemoryStream();
        file.Save(stream);
        return AccessibilityClaim.Add(stream.ToArray(), whole, measure.Printable(whole.Title));
    }

    private static PageSetter Set(PaperDocument document, PdfTextMeasure measure)
    {
        var pages = new PageSetter(document, measure);
        return document.Closer
            .TakeWhile(_ => pages.Pages.Length > 1)
            .Select(closer => new PageSetter(document with { Typography = closer }, measure))
            .FirstOrDefault(closer => closer.Pages.Length < pages.Pages.Length) ?? pages;
    }

    /// <summary>A reader must know that something is missing, rather than wonder at a box.</summary>
    private static PaperDocument WithNoteOnMissingLetters(PaperDocument document, PdfTextMeasure measure) =>
        measure.CanPrint(PlainText.Of(document))
            ? document
            : document with { Blocks = document.Blocks.Add(new Paragraph(MissingLettersNote)) };

    private static PdfDocument NewFile(PaperDocument document, PdfTextMeasure measure)
    {
        var file = new PdfDocument();
        file.Version = 17;
        file.Options.ColorMode = PdfColorMode.Undefined;
        file.Options.CompressContentStreams = true;
        UAManager.ForDocument(file).SetDocumentLanguage(document.Language);
        file.Info.Title = measure.Printable(document.Title);
        file.Info.Subject = file.Info.Title;
        file.Info.Creator = "HomeLine";
        file.Info.CreationDate = document.PrintedAt.ToDateTimeUnspecified();
        file.Info.ModificationDate = file.Info.CreationDate;
        file.Internals.FirstDocumentID = file.Internals.SecondDocumentID = Fingerprint(document);
        return file;
    }

    /// <summary>Sixteen characters that stay the same as long as the text does.</summary>
    private static string Fingerprint(PaperDocument document) =>
        Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes($"{document.Size} {PlainText.Of(document)}")))[..16];
}
