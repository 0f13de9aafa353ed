using HomeLine.Paper.Layout.Typesetting;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace HomeLine.Paper.Pdf;

/// <summary>Draws on one page at a time and builds the structure tree as it goes. Black and white only.</summary>
internal sealed class PdfCanvas(PdfDocument file, PdfTextMeasure measure) : ICanvas, IDisposable
{
    private static readonly XColor Black = XColor.FromGrayScale(0);
    private static readonly XBrush BlackBrush = new XSolidBrush(Black);
    private static readonly XBrush WhiteBrush = new XSolidBrush(XColor.FromGrayScale(1));
    private readonly StructureBuilder structure = UAManager.ForDocument(file).StructureBuilder;
    private XGraphics? graphics;

    private XGraphics Graphics => graphics ?? throw new InvalidOperationException("No page has been added yet.");

    public void AddPage(double width, double height)
    {
        graphics?.Dispose();
        var page = file.AddPage();
        page.Width = XUnit.FromPoint(width);
        page.Height = XUnit.FromPoint(height);
        graphics = XGraphics.FromPdfPage(page);
    }

    public void Text(string text, double x, double baseline, TextStyle style, bool white = false) =>
        Graphics.DrawString(text, measure.Font(style), white ? WhiteBrush : BlackBrush, x, baseline);

    public void Line(double x1, double y1, double x2, double y2, double thickness) =>
        Graphics.DrawLine(new XPen(Black, thickness), x1, y1, x2, y2);

    public void Frame(double x, double y, double width, double height, double thickness) =>
        Graphics.DrawRectangle(new XPen(Black, thickness), x + (thickness / 2), y + (thickness / 2), width - thickness, height - thickness);

    public void Fill(double x, double y, double width, double height) =>
        Graphics.DrawRectangle(BlackBrush, x, y, width, height);

    public void Begin(Role role)
    {
        if (role == Role.Artifact)
            structure.BeginArtifact();
        else if (role == Role.Section)
            structure.BeginElement(PdfGroupingElementTag.Section);
        else
            structure.BeginElement(BlockTag(role));
        if (role == Role.ColumnHeader)
            ScopeToColumn();
    }

    public void End() => structure.End();

    public void Dispose() => graphics?.Dispose();

    private static PdfBlockLevelElementTag BlockTag(Role role) => role switch
    {
        Role.Heading1 => PdfBlockLevelElementTag.Heading1,
        Role.Heading2 => PdfBlockLevelElementTag.Heading2,
        Role.Heading3 => PdfBlockLevelElementTag.Heading3,
        Role.Paragraph => PdfBlockLevelElementTag.Paragraph,
        Role.List => PdfBlockLevelElementTag.List,
        Role.ListItem => PdfBlockLevelElementTag.ListItem,
        Role.ListLabel => PdfBlockLevelElementTag.Label,
        Role.ListBody => PdfBlockLevelElementTag.ListBody,
        Role.Table => PdfBlockLevelElementTag.Table,
        Role.TableRow => PdfBlockLevelElementTag.TableRow,
        Role.ColumnHeader => PdfBlockLevelElementTag.TableHeaderCell,
        Role.DataCell => PdfBlockLevelElementTag.TableDataCell,
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "Not a block of text."),
    };

    /// <summary>Says that the header belongs to the cells below it (ISO 32000-1, table 349).</summary>
    private void ScopeToColumn()
    {
        var attributes = new PdfDictionary(file);
        attributes.Elements.SetName("/O", "/Table");
        attributes.Elements.SetName("/Scope", "/Column");
        structure.CurrentStructureElement.Elements["/A"] = attributes;
    }
}
