using System.Globalization;
using System.Net;
using System.Text;
using HomeLine.Paper.Layout;

namespace HomeLine.Paper.Html;

/// <summary>
/// The same document as plain, accessible HTML: for reading on a screen before printing. Elements and class names only; the page that shows
/// it brings the looks, so no style or script is in the text.
/// </summary>
public static class HtmlPreview
{
    /// <summary>An <c>article</c> element in the document's language; every word is encoded.</summary>
    public static string Of(PaperDocument document)
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<article class=\"paper\" lang=\"{Encode(document.Language)}\">\n");
        foreach (var block in document.Blocks)
            Append(html, block);
        html.Append(CultureInfo.InvariantCulture, $"<p class=\"paper-foot\">{Encode(document.Footer)}</p>\n</article>\n");
        return html.ToString();
    }

    private static void Append(StringBuilder html, Block block)
    {
        switch (block)
        {
            case Heading heading:
                Element(html, $"h{heading.Level}", Encode(heading.Text));
                break;
            case Paragraph paragraph:
                html.Append(CultureInfo.InvariantCulture, $"<p class=\"{RankClass(paragraph.Rank)}\">{Rich(paragraph.Text)}</p>\n");
                break;
            case BulletList list:
                List(html, "", list.Items.Select(Rich));
                break;
            case FactLines facts:
                foreach (var fact in facts.Facts)
                    Element(html, "p", Rich(RichText.Labelled(fact.Label, fact.Value)));
                break;
            case ContactStrip strip:
                List(html, " class=\"paper-contacts\"", strip.Contacts.Select(contact => $"{Encode(contact.When)} <strong>{Encode(contact.Number)}</strong>"));
                break;
            case Table table:
                AppendTable(html, table);
                break;
            case Callout callout:
                AppendCallout(html, callout);
                break;
            case SideBySide pair:
                Group(html, "paper-pair", [pair.Left, pair.Right]);
                break;
            case WritingLines lines:
                foreach (var label in lines.Labels.Where(label => label.Length > 0))
                    html.Append(CultureInfo.InvariantCulture, $"<p class=\"paper-line\">{Encode(label)}</p>\n");
                break;
            case KeepTogether together:
                Group(html, "paper-together", together.Content);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "No preview for this block.");
        }
    }

    private static void AppendTable(StringBuilder html, Table table)
    {
        html.Append("<table>\n<thead><tr>");
        foreach (var column in table.Columns)
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{Encode(column.Header)}</th>");
        html.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
            Element(html, "tr", string.Concat(row.Cells.Select(Cell)));
        html.Append("</tbody>\n</table>\n");
    }

    /// <summary>The box is decoration: the word beside it says whether it is ticked.</summary>
    private static string Cell(TableCell cell)
    {
        var box = cell.Tick switch
        {
            true => "<span class=\"paper-tick\" aria-hidden=\"true\">☑</span> ",
            false => "<span class=\"paper-tick\" aria-hidden=\"true\">☐</span> ",
            null => "",
        };
        return $"<td>{box}{Rich(cell.Text)}</td>";
    }

    private static void AppendCallout(StringBuilder html, Callout callout)
    {
        var border = callout.Border switch
        {
            Border.Heavy => "heavy",
            Border.Banner => "banner",
            _ => "thin",
        };
        html.Append(CultureInfo.InvariantCulture, $"<section class=\"paper-box paper-box-{border}\">\n");
        if (callout.Title.Length > 0)
            Element(html, "h2", Encode(callout.Title));
        foreach (var inner in callout.Content)
            Append(html, inner);
        html.Append("</section>\n");
    }

    private static void Group(StringBuilder html, string cssClass, IEnumerable<Block> blocks)
    {
        html.Append(CultureInfo.InvariantCulture, $"<div class=\"{cssClass}\">\n");
        foreach (var block in blocks)
            Append(html, block);
        html.Append("</div>\n");
    }

    private static void List(StringBuilder html, string attributes, IEnumerable<string> items)
    {
        html.Append(CultureInfo.InvariantCulture, $"<ul{attributes}>\n");
        foreach (var item in items)
            Element(html, "li", item);
        html.Append("</ul>\n");
    }

    private static string RankClass(TextRank rank) => rank switch
    {
        TextRank.Lead => "paper-lead",
        TextRank.Small => "paper-small",
        _ => "paper-body",
    };

    private static string Rich(RichText text) =>
        string.Concat(text.Runs.Select(run => run.Strong ? $"<strong>{Encode(run.Text)}</strong>" : Encode(run.Text)));

    private static void Element(StringBuilder html, string name, string content) =>
        html.Append(CultureInfo.InvariantCulture, $"<{name}>{content}</{name}>\n");

    private static string Encode(string text) => WebUtility.HtmlEncode(text);
}
