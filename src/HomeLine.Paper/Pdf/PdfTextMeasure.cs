using System.Globalization;
using System.Text;
using HomeLine.Paper.Layout.Typesetting;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace HomeLine.Paper.Pdf;

/// <summary>Widths from the shipped fonts, and which letters they have.</summary>
internal sealed class PdfTextMeasure : ITextMeasure, IDisposable
{
    /// <summary>Stands for a letter the fonts do not have: seen on paper, and kept as a letter when the text is read back.</summary>
    public const char Missing = '\uFFFD';
    private readonly XGraphics graphics = XGraphics.CreateMeasureContext(
        new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
    private readonly Dictionary<TextStyle, XFont> fonts = [];
    private readonly Dictionary<(string, TextStyle), double> widths = [];

    public XFont Font(TextStyle style)
    {
        if (!fonts.TryGetValue(style, out var font))
            fonts[style] = font = SheetFonts.Font(style.Size, style.Strong);
        return font;
    }

    public double Width(string text, TextStyle style)
    {
        if (!widths.TryGetValue((text, style), out var width))
            widths[(text, style)] = width = graphics.MeasureString(text, Font(style)).Width;
        return width;
    }

    /// <summary>
    /// Right-to-left and joined scripts need shaping that this engine lacks: their letters, like picture signs, become <see cref="Missing"/>.
    /// Marks that only steer direction or joining are dropped.
    /// </summary>
    public string Printable(string text)
    {
        var font = Font(new TextStyle(10, false));
        var printable = new StringBuilder(text.Length);
        foreach (var rune in WholeLetters(text).Normalize(NormalizationForm.FormC).EnumerateRunes())
            Append(printable, rune, font);
        return printable.ToString();
    }

    /// <summary>Whether every letter of the text can be printed.</summary>
    public bool CanPrint(string text) => !Printable(text).Contains(Missing, StringComparison.Ordinal);

    public void Dispose() => graphics.Dispose();

    /// <summary>Half a surrogate pair becomes <see cref="Missing"/>; normalizing would refuse it.</summary>
    private static string WholeLetters(string text) => string.Concat(text.EnumerateRunes());

    private static void Append(StringBuilder printable, Rune rune, XFont font)
    {
        switch (Rune.GetUnicodeCategory(rune))
        {
            case UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator:
                printable.Append(' ');
                break;
            case UnicodeCategory.Format:
                break;
            case var category:
                // A variation selector belongs to the sign before it and is never seen by itself.
                if (category == UnicodeCategory.NonSpacingMark && rune.Value is >= 0xFE00 and <= 0xFE0F)
                    break;
                if (GlyphHelper.GlyphIndexFromCodePoint(rune.Value, font) == 0)
                    printable.Append(Missing);
                else
                    printable.Append(rune.ToString());
                break;
        }
    }
}
