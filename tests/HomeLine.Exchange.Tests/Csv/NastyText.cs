using CsCheck;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>Text that breaks careless readers and writers: separators, quotes, line breaks, formulas, invisible and wide characters.</summary>
internal static class NastyText
{
    private static readonly Gen<string> Piece = Gen.OneOf(
        "=", "+", "-", "@", "\t", "\r", "\n", "\r\n", "\0", "'", "\"", "\"\"", ",", ";", "|", " ", "  ", "x", "Zoë", "日本", "٣", "😀", "\uFEFF", "\u200B",
        "=1+1", "=HYPERLINK(\"http://x\")", "-5", "+15550100", "@SUM(A1)", "＝", "03/04/2027", "NULL", "null", "true", "46449", "sep=;", "#", "\\", "'=");

    public static readonly Gen<string> Any = Piece.Array[0, 6].Select(string.Concat);

    /// <summary>Text with something to see in it, for fields that must have a value.</summary>
    public static readonly Gen<string> NotBlank = Any.Select(text => string.IsNullOrWhiteSpace(text) ? "x" + text : text);
}
