using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Turns running text into line pieces: paragraphs, headings, lists.</summary>
internal sealed class TextSetter(Typography type, LineBreaker breaker, ITextMeasure measure)
{
    private const double BulletIndent = 0.95;

    /// <summary>Height of one line in points.</summary>
    public double LineHeight(double size) => size * type.LineSpacing;

    /// <summary>Lines no wider than the width; a last line with a lonely word is filled by breaking the others a little earlier.</summary>
    public ImmutableArray<TextLine> Break(RichText text, double size, double width, bool strong = false)
    {
        var lines = breaker.Break(text, size, width, strong);
        for (var narrower = width; lines.Length > 1 && Width(lines[^1]) < width / 3 && narrower > width / 2; narrower *= 0.95)
        {
            var tried = breaker.Break(text, size, narrower, strong);
            if (tried.Length > lines.Length)
                break;
            lines = tried;
        }

        return lines;
    }

    /// <summary>Width of a set line in points.</summary>
    public double Width(TextLine line) => line.Segments.Sum(segment => measure.Width(segment.Text, segment.Style));

    /// <summary>Width of the longest word in points.</summary>
    public double LongestWord(RichText text, double size, bool strong) => (
        from run in text.Runs
        from word in WordGlue.Split(measure.Printable(run.Text))
        select measure.Width(word, new TextStyle(size, run.Strong || strong))).DefaultIfEmpty().Max();

    /// <summary>One element of the structure, of as many lines as it needs.</summary>
    public IEnumerable<Piece> Element(
        RichText text, double size, double width, Role role, double spaceBefore, bool strong = false, bool keepWithNext = false)
    {
        var lines = Break(text, size, width, strong);
        for (var index = 0; index < lines.Length; index++)
        {
            var line = lines[index];
            yield return new Piece
            {
                SpaceBefore = index == 0 ? spaceBefore : 0,
                Height = LineHeight(size),
                KeepWithNext = keepWithNext || StaysWithNext(index, lines.Length),
                Opens = index == 0 ? [role] : [],
                Closes = index == lines.Length - 1 ? 1 : 0,
                Paint = (canvas, x, y) => Draw(canvas, line, x, y, size),
            };
        }
    }

    public IEnumerable<Piece> List(ImmutableArray<RichText> items, double size, double width, double spaceBefore)
    {
        for (var index = 0; index < items.Length; index++)
        {
            var space = index == 0 ? spaceBefore : size * 0.12;
            foreach (var piece in Item(items[index], size, width, space))
                yield return Enclose(piece, index == 0, index == items.Length - 1);
        }
    }

    /// <summary>Draws the line with its top left corner at the given point.</summary>
    public void Draw(ICanvas canvas, TextLine line, double x, double y, double size, bool white = false)
    {
        var baseline = y + Baseline(size);
        foreach (var segment in line.Segments)
            canvas.Text(segment.Text, x + segment.X, baseline, segment.Style, white);
    }

    private IEnumerable<Piece> Item(RichText text, double size, double width, double spaceBefore)
    {
        var indent = size * BulletIndent;
        var lines = Break(text, size, width - indent);
        for (var index = 0; index < lines.Length; index++)
        {
            var (line, first) = (lines[index], index == 0);
            yield return new Piece
            {
                SpaceBefore = first ? spaceBefore : 0,
                Height = LineHeight(size),
                KeepWithNext = StaysWithNext(index, lines.Length),
                Opens = first ? [Role.ListItem] : [],
                Closes = index == lines.Length - 1 ? 2 : 0,
                Paint = (canvas, x, y) =>
                {
                    if (first)
                        Bullet(canvas, x, y, size);
                    Draw(canvas, line, x + indent, y, size);
                },
            };
        }
    }

    private void Bullet(ICanvas canvas, double x, double y, double size)
    {
        canvas.Begin(Role.ListLabel);
        canvas.Text("•", x + (size * 0.1), y + Baseline(size), new TextStyle(size, true));
        canvas.End();
        canvas.Begin(Role.ListBody);
    }

    /// <summary>The first piece opens the list around its item, the last closes it.</summary>
    private static Piece Enclose(Piece piece, bool firstItem, bool lastItem) => piece with
    {
        Opens = firstItem && piece.Opens.Length > 0 ? piece.Opens.Insert(0, Role.List) : piece.Opens,
        Closes = lastItem && piece.Closes > 0 ? piece.Closes + 1 : piece.Closes,
    };

    /// <summary>No single line alone at the foot or the head of a page.</summary>
    private static bool StaysWithNext(int index, int count) => index < count - 1 && (index == 0 || index == count - 2);

    /// <summary>Puts small letters in the middle of the line: they reach about half the size above the baseline.</summary>
    private double Baseline(double size) => (LineHeight(size) / 2) + (size * 0.32);
}
