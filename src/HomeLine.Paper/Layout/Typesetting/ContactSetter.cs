using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Boxes with numbers to call: beside one another, or in one column with each number after its label.</summary>
internal sealed class ContactSetter(Typography type, TextSetter text)
{
    private readonly double pad = type.Body * 0.5;

    public Piece Set(ContactStrip strip, double width) => type.SingleColumn ? Below(strip, width) : Beside(strip, width);

    private Piece Beside(ContactStrip strip, double width)
    {
        var cell = width / strip.Contacts.Length;
        var labels = strip.Contacts.Select(contact => text.Break(contact.When, type.Body, cell - (2 * pad))).ToImmutableArray();
        var numbers = strip.Contacts.Select(contact => text.Break(contact.Number, type.Number, cell - (2 * pad), true)).ToImmutableArray();
        var labelHeight = labels.Max(lines => lines.Length) * text.LineHeight(type.Body);
        var height = labelHeight + (numbers.Max(lines => lines.Length) * text.LineHeight(type.Number)) + pad;
        return Box(height, (canvas, x, y) =>
        {
            Frame(canvas, x, y, width, height);
            for (var index = 0; index < labels.Length; index++)
            {
                var left = x + (index * cell);
                if (index > 0)
                    Rule(canvas, left, y, left, y + height);
                Contact(canvas, left + pad, y + (pad * 0.4), labels[index], left + pad, y + (pad * 0.4) + labelHeight, numbers[index]);
            }
        });
    }

    private Piece Below(ContactStrip strip, double width)
    {
        var labelWidth = strip.Contacts.Max(contact => text.Width(text.Break(contact.When, type.Body, width / 2)[0]));
        var numberLeft = pad + labelWidth + type.Body;
        var labels = strip.Contacts.Select(contact => text.Break(contact.When, type.Body, labelWidth + 1)).ToImmutableArray();
        var numbers = strip.Contacts.Select(contact => text.Break(contact.Number, type.Number, width - numberLeft - pad, true))
            .ToImmutableArray();
        var row = (numbers.Max(lines => lines.Length) * text.LineHeight(type.Number)) + (pad * 0.8);
        var height = row * labels.Length;
        var drop = (text.LineHeight(type.Number) - text.LineHeight(type.Body)) / 2;
        return Box(height, (canvas, x, y) =>
        {
            Frame(canvas, x, y, width, height);
            for (var index = 0; index < labels.Length; index++)
            {
                var top = y + (index * row) + (pad * 0.4);
                if (index > 0)
                    Rule(canvas, x, y + (index * row), x + width, y + (index * row));
                Contact(canvas, x + pad, top + drop + 1, labels[index], x + numberLeft, top, numbers[index]);
            }
        });
    }

    private Piece Box(double height, Action<ICanvas, double, double> paint) => new()
    {
        SpaceBefore = type.BlockGap,
        Height = height,
        Opens = [Role.List],
        Closes = 1,
        Paint = paint,
    };

    private void Contact(
        ICanvas canvas, double labelX, double labelY, ImmutableArray<TextLine> label, double numberX, double numberY,
        ImmutableArray<TextLine> number)
    {
        canvas.Begin(Role.ListItem);
        canvas.Begin(Role.ListBody);
        Lines(canvas, label, labelX, labelY, type.Body);
        Lines(canvas, number, numberX, numberY, type.Number);
        canvas.End();
        canvas.End();
    }

    private void Lines(ICanvas canvas, ImmutableArray<TextLine> lines, double x, double y, double size)
    {
        for (var index = 0; index < lines.Length; index++)
            text.Draw(canvas, lines[index], x, y + (index * text.LineHeight(size)), size);
    }

    private static void Frame(ICanvas canvas, double x, double y, double width, double height)
    {
        canvas.Begin(Role.Artifact);
        canvas.Frame(x, y, width, height, 2.25);
        canvas.End();
    }

    private static void Rule(ICanvas canvas, double x1, double y1, double x2, double y2)
    {
        canvas.Begin(Role.Artifact);
        canvas.Line(x1, y1, x2, y2, 1);
        canvas.End();
    }
}
