using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Turns boxes into pieces: callouts, lines to write on.</summary>
internal sealed class BoxSetter(Typography type, TextSetter text)
{
    private readonly double pad = type.Body * 0.5;

    /// <summary>Width left for what stands inside a callout.</summary>
    public double InnerWidth(double width) => width - (2 * pad);

    /// <summary>A bordered box around its title and content; <paramref name="atLeast"/> makes neighbours equally tall.</summary>
    public Piece Callout(Callout callout, Stack content, double width, double atLeast = 0)
    {
        var title = callout.Title.Length == 0
            ? ImmutableArray<TextLine>.Empty
            : text.Break(callout.Title, type.Heading2, InnerWidth(width), true);
        var titleHeight = title.Length * text.LineHeight(type.Heading2);
        var bandHeight = callout.Border == Border.Banner ? titleHeight + (pad * 0.7) : 0;
        var contentTop = title.Length == 0 ? pad * 0.6 : titleHeight + (pad * 1.05);
        var height = Math.Max(atLeast, contentTop + content.Height + (pad * 0.75));
        return new Piece
        {
            SpaceBefore = type.BlockGap,
            Height = height,
            Opens = [Role.Section],
            Closes = 1,
            Paint = (canvas, x, y) =>
            {
                DrawBorder(canvas, callout.Border, x, y, width, height, bandHeight);
                Title(canvas, title, callout.Border, x + pad, y + (pad * 0.4));
                content.Draw(canvas, x + pad, y + contentTop);
            },
        };
    }

    /// <summary>One ruled line for each label.</summary>
    public IEnumerable<Piece> WritingLines(WritingLines lines, double width)
    {
        foreach (var label in lines.Labels)
        {
            var line = text.Break(label, type.Small, width);
            var height = Math.Max(type.Body * 1.9, line.Length * text.LineHeight(type.Small));
            yield return new Piece
            {
                Height = height,
                Opens = label.Length == 0 ? [] : [Role.Paragraph],
                Closes = label.Length == 0 ? 0 : 1,
                Paint = (canvas, x, y) => Ruled(canvas, label.Length == 0 ? [] : line, x, y, width, height),
            };
        }
    }

    private static void DrawBorder(ICanvas canvas, Border border, double x, double y, double width, double height, double bandHeight)
    {
        canvas.Begin(Role.Artifact);
        canvas.Frame(x, y, width, height, border == Border.Thin ? 0.9 : 2.25);
        if (bandHeight > 0)
            canvas.Fill(x, y, width, bandHeight);
        canvas.End();
    }

    private void Title(ICanvas canvas, ImmutableArray<TextLine> title, Border border, double x, double y)
    {
        if (title.Length == 0)
            return;
        canvas.Begin(Role.Heading2);
        for (var index = 0; index < title.Length; index++)
        {
            var top = y + (index * text.LineHeight(type.Heading2));
            text.Draw(canvas, title[index], x, top, type.Heading2, white: border == Border.Banner);
        }

        canvas.End();
    }

    private void Ruled(ICanvas canvas, ImmutableArray<TextLine> label, double x, double y, double width, double height)
    {
        var labelWidth = 0.0;
        foreach (var line in label)
        {
            text.Draw(canvas, line, x, y + height - text.LineHeight(type.Small) - 1, type.Small);
            labelWidth = text.Width(line);
        }

        canvas.Begin(Role.Artifact);
        canvas.Line(x + labelWidth + (label.IsEmpty ? 0 : 4), y + height - 2, x + width, y + height - 2, 0.5);
        canvas.End();
    }
}
