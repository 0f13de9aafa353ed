using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Turns blocks into pieces of the right width, in reading order.</summary>
internal sealed class Typesetter
{
    private readonly Typography type;
    private readonly TextSetter text;
    private readonly TableSetter tables;
    private readonly BoxSetter boxes;
    private readonly ContactSetter contacts;
    private readonly double pageHeight;

    /// <param name="type">Sizes and room.</param>
    /// <param name="measure">How wide text is.</param>
    /// <param name="pageHeight">Room for blocks on one page, in points. Boxes taller than it are taken apart.</param>
    public Typesetter(Typography type, ITextMeasure measure, double pageHeight)
    {
        this.type = type;
        this.pageHeight = pageHeight;
        text = new TextSetter(type, new LineBreaker(measure), measure);
        tables = new TableSetter(type, text, pageHeight / 3);
        boxes = new BoxSetter(type, text);
        contacts = new ContactSetter(type, text);
    }

    public IEnumerable<Piece> Set(Block block, double width) => block switch
    {
        Heading heading => SetHeading(heading, width),
        Paragraph paragraph => SetParagraph(paragraph, width),
        BulletList list => text.List(list.Items, type.Body, width, type.BlockGap / 2),
        FactLines facts => facts.Facts.SelectMany(fact => SetFact(fact, width)),
        ContactStrip strip => [contacts.Set(strip, width)],
        Table table => tables.Set(table, width),
        Callout callout => SetCallout(callout, width),
        SideBySide pair => SetPair(pair, width),
        WritingLines lines => boxes.WritingLines(lines, width),
        KeepTogether together => SetTogether(together, width),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "No layout for this block."),
    };

    /// <summary>All blocks, one below another.</summary>
    public Stack StackOf(IEnumerable<Block> blocks, double width) =>
        new([.. blocks.SelectMany(block => Set(block, width))]);

    private IEnumerable<Piece> SetHeading(Heading heading, double width)
    {
        var (size, role) = heading.Level switch
        {
            1 => (type.Heading1, Role.Heading1),
            2 => (type.Heading2, Role.Heading2),
            _ => (type.Body, Role.Heading3),
        };
        return text.Element(heading.Text, size, width, role, type.BlockGap, strong: true, keepWithNext: true);
    }

    private IEnumerable<Piece> SetParagraph(Paragraph paragraph, double width) => paragraph.Rank switch
    {
        TextRank.Lead => text.Element(paragraph.Text, type.Lead, width, Role.Paragraph, type.BlockGap, strong: true),
        TextRank.Small => text.Element(paragraph.Text, type.Small, width, Role.Paragraph, type.BlockGap / 2),
        _ => text.Element(paragraph.Text, type.Body, width, Role.Paragraph, type.BlockGap),
    };

    private IEnumerable<Piece> SetFact(Fact fact, double width) =>
        text.Element(RichText.Labelled(fact.Label, fact.Value), type.Body, width, Role.Paragraph, type.BlockGap / 4);

    private IEnumerable<Piece> SetCallout(Callout callout, double width)
    {
        var box = boxes.Callout(callout, StackOf(callout.Content, boxes.InnerWidth(width)), width);
        return box.Height <= pageHeight ? [box] : SetUnboxed(callout, width);
    }

    /// <summary>Too tall for any page: the title and the content flow on without a border.</summary>
    private IEnumerable<Piece> SetUnboxed(Callout callout, double width)
    {
        var title = callout.Title.Length == 0 ? [] : SetHeading(new Heading(2, callout.Title), width);
        return title.Concat(callout.Content.SelectMany(block => Set(block, width)));
    }

    private IEnumerable<Piece> SetPair(SideBySide pair, double width)
    {
        var stacked = Set(pair.Left, width).Concat(Set(pair.Right, width));
        if (type.SingleColumn)
            return stacked;
        var gap = type.Body * 0.6;
        var leftWidth = (width - gap) * pair.LeftShare;
        var rightWidth = width - gap - leftWidth;
        var height = Math.Max(StackOf([pair.Left], leftWidth).Height, StackOf([pair.Right], rightWidth).Height);
        if (height > pageHeight)
            return stacked;
        var (left, right) = (Stretched(pair.Left, leftWidth, height), Stretched(pair.Right, rightWidth, height));
        return
        [
            new Piece
            {
                SpaceBefore = type.BlockGap,
                Height = height,
                Paint = (canvas, x, y) =>
                {
                    left.Draw(canvas, x, y);
                    right.Draw(canvas, x + leftWidth + gap, y);
                },
            },
        ];
    }

    private Stack Stretched(Block block, double width, double height) => block is Callout callout
        ? new Stack([boxes.Callout(callout, StackOf(callout.Content, boxes.InnerWidth(width)), width, height)])
        : StackOf([block], width);

    private IEnumerable<Piece> SetTogether(KeepTogether together, double width)
    {
        var pieces = together.Content.SelectMany(block => Set(block, width)).ToImmutableArray();
        return pieces.Select((piece, index) => index == pieces.Length - 1 ? piece : piece with { KeepWithNext = true });
    }
}
