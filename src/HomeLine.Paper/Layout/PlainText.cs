using System.Text;

namespace HomeLine.Paper.Layout;

/// <summary>What a document says, one block or row to a line, without any drawing.</summary>
public static class PlainText
{
    /// <summary>The text in reading order, then the running header and the footer.</summary>
    public static string Of(PaperDocument document)
    {
        var text = new StringBuilder();
        foreach (var block in document.Blocks)
            Append(text, block);
        Line(text, $"[top of later pages] {document.RunningHeader}");
        Line(text, $"[foot] {document.Footer}");
        return text.ToString();
    }

    private static void Append(StringBuilder text, Block block)
    {
        switch (block)
        {
            case Heading heading:
                Line(text, $"{new string('#', heading.Level)} {heading.Text}");
                break;
            case Paragraph paragraph:
                Line(text, paragraph.Text.Plain);
                break;
            case BulletList list:
                AppendEach(text, list.Items.Select(item => $"- {item.Plain}"));
                break;
            case FactLines facts:
                AppendEach(text, facts.Facts.Select(fact => $"{fact.Label} {fact.Value}"));
                break;
            case ContactStrip strip:
                AppendEach(text, strip.Contacts.Select(contact => $"{contact.When}: {contact.Number}"));
                break;
            case Table table:
                Line(text, string.Join(" | ", table.Columns.Select(column => column.Header)));
                AppendEach(text, table.Rows.Select(row => string.Join(" | ", row.Cells.Select(CellText))));
                break;
            case Callout callout:
                AppendCallout(text, callout);
                break;
            case SideBySide pair:
                Append(text, pair.Left);
                Append(text, pair.Right);
                break;
            case WritingLines lines:
                AppendEach(text, lines.Labels.Select(label => $"{label} ____".TrimStart()));
                break;
            case KeepTogether together:
                foreach (var inner in together.Content)
                    Append(text, inner);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "No plain text for this block.");
        }
    }

    private static void AppendCallout(StringBuilder text, Callout callout)
    {
        if (callout.Title.Length > 0)
            Line(text, $"## {callout.Title}");
        foreach (var inner in callout.Content)
            Append(text, inner);
    }

    private static string CellText(TableCell cell) => cell.Tick switch
    {
        true => $"[x] {cell.Text.Plain}",
        false => $"[ ] {cell.Text.Plain}",
        null => cell.Text.Plain,
    };

    private static void AppendEach(StringBuilder text, IEnumerable<string> lines)
    {
        foreach (var line in lines)
            Line(text, line);
    }

    private static void Line(StringBuilder text, string line) => text.Append(line.TrimEnd()).Append('\n');
}
