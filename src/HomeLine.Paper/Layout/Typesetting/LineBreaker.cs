using System.Collections.Immutable;
using System.Globalization;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>A stretch of one line, in one weight, at its place from the line's start.</summary>
internal readonly record struct Segment(string Text, double X, TextStyle Style);

/// <summary>One line of text.</summary>
internal sealed record TextLine(ImmutableArray<Segment> Segments);

/// <summary>Breaks text into lines: at spaces, and inside a word only when the word alone is wider than the line.</summary>
internal sealed class LineBreaker(ITextMeasure measure)
{
    /// <summary>At least one line, also for empty text.</summary>
    public ImmutableArray<TextLine> Break(RichText text, double size, double width, bool allStrong = false)
    {
        var lines = ImmutableArray.CreateBuilder<TextLine>();
        var line = new List<Word>();
        var used = 0.0;
        foreach (var word in Words(text, size, allStrong).SelectMany(word => Cut(word, width)))
        {
            var space = line.Count == 0 ? 0 : measure.Width(" ", line[^1].Style);
            var needed = measure.Width(word.Text, word.Style);
            if (line.Count > 0 && used + space + needed > width)
            {
                lines.Add(Join(line, continues: !line[^1].GoesOn));
                line.Clear();
                (used, space) = (0, 0);
            }

            line.Add(word);
            used += space + needed;
        }

        if (line.Count > 0 || lines.Count == 0)
            lines.Add(Join(line, continues: false));
        return lines.ToImmutable();
    }

    private IEnumerable<Word> Words(RichText text, double size, bool allStrong) =>
        from run in text.Runs
        from word in WordGlue.Split(measure.Printable(run.Text))
        select new Word(word, new TextStyle(size, run.Strong || allStrong));

    private IEnumerable<Word> Cut(Word word, double width)
    {
        if (measure.Width(word.Text, word.Style) <= width)
        {
            yield return word;
            yield break;
        }

        var part = "";
        var letters = StringInfo.GetTextElementEnumerator(word.Text);
        while (letters.MoveNext())
        {
            var letter = letters.GetTextElement();
            if (part.Length > 0 && measure.Width(part + letter, word.Style) > width)
            {
                yield return new Word(part, word.Style, GoesOn: true);
                part = "";
            }

            part += letter;
        }

        yield return word with { Text = part };
    }

    /// <summary>A space stays at the end of a line that continues, so that copied and spoken text keeps its words apart.</summary>
    private TextLine Join(List<Word> words, bool continues)
    {
        var segments = ImmutableArray.CreateBuilder<Segment>();
        var x = 0.0;
        for (var start = 0; start < words.Count;)
        {
            var style = words[start].Style;
            var end = start;
            while (end < words.Count && words[end].Style == style)
                end++;
            var text = string.Join(' ', words[start..end].Select(word => word.Text));
            if (end < words.Count || continues)
                text += " ";
            segments.Add(new Segment(text, x, style));
            x += measure.Width(text, style);
            start = end;
        }

        return new TextLine(segments.ToImmutable());
    }

    /// <param name="Text">Without spaces, but for those that may not end a line.</param>
    /// <param name="Style">Its style.</param>
    /// <param name="GoesOn">The word was too wide and goes on in the next line.</param>
    private readonly record struct Word(string Text, TextStyle Style, bool GoesOn = false);
}
