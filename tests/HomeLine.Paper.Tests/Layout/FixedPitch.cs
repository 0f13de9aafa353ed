using HomeLine.Paper.Layout.Typesetting;

namespace HomeLine.Paper.Tests;

/// <summary>Every letter as wide as half its size, so that line ends can be counted by hand.</summary>
internal sealed class FixedPitch : ITextMeasure
{
    public double Width(string text, TextStyle style) => text.Length * style.Size / 2;

    public string Printable(string text) => text;
}
