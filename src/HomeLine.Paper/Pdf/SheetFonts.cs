using System.Reflection;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace HomeLine.Paper.Pdf;

/// <summary>The two faces every sheet is set in, shipped with the program so that a printout never depends on the machine.</summary>
internal sealed class SheetFonts : IFontResolver
{
    private const string Family = "Noto Sans";
    private const string Regular = "NotoSans-Regular.ttf";
    private const string Bold = "NotoSans-Bold.ttf";
    private static readonly Lock Gate = new();

    private SheetFonts()
    {
    }

    /// <summary>A face at a size in points, always with full Unicode encoding.</summary>
    public static XFont Font(double size, bool strong)
    {
        Register();
        var style = strong ? XFontStyleEx.Bold : XFontStyleEx.Regular;
        return new XFont(Family, size, style, new XPdfFontOptions(PdfSharp.Pdf.PdfFontEncoding.Unicode));
    }

    public byte[]? GetFont(string faceName)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(faceName);
        if (stream is null)
            return null;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        familyName == Family ? new FontResolverInfo(isBold ? Bold : Regular) : null;

    /// <summary>The package keeps one resolver for the whole process and refuses a second.</summary>
    private static void Register()
    {
        lock (Gate)
            GlobalFontSettings.FontResolver ??= new SheetFonts();
    }
}
