using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Sets a whole document on pages and draws them, page furniture included.</summary>
internal sealed class PageSetter
{
    private readonly PaperDocument document;
    private readonly Typography type;
    private readonly TextSetter text;
    private readonly ITextMeasure measure;
    private readonly double width;
    private readonly ImmutableArray<TextLine> header;
    private readonly ImmutableArray<TextLine> footer;
    private readonly double headerHeight;

    public PageSetter(PaperDocument document, ITextMeasure measure)
    {
        this.document = document;
        this.measure = measure;
        type = document.Typography;
        text = new TextSetter(type, new LineBreaker(measure), measure);
        width = document.Size.Width() - (2 * type.Margin);
        header = text.Break(document.RunningHeader, type.Small, width - type.Body, strong: true);
        footer = text.Break(document.Footer, type.Small, width - measure.Width(PageNumber(88, 88), Small));
        headerHeight = (header.Length * text.LineHeight(type.Small)) + type.Body;
        Pages = Deal();
    }

    /// <summary>The pages, each with its pieces.</summary>
    public ImmutableArray<ImmutableArray<Placed>> Pages { get; }

    private TextStyle Small => new(type.Small, false);

    private double FooterTop => document.Size.Height() - FooterEdge - (footer.Length * text.LineHeight(type.Small));

    /// <summary>The foot stands in the lower margin, but never nearer to the edge than printers reach (our own default: 1/3 inch).</summary>
    private double FooterEdge => Math.Max(24, type.Margin - (footer.Length * text.LineHeight(type.Small)));

    private double BodyHeight => FooterTop - (type.BlockGap * 0.8) - type.Margin;

    /// <summary>Draws one page, counted from 0.</summary>
    public void Draw(ICanvas canvas, int page)
    {
        if (page > 0)
            DrawHeader(canvas);
        var top = type.Margin + (page > 0 ? headerHeight + type.BlockGap : 0);
        foreach (var (piece, y, again) in Pages[page])
        {
            if (again)
                piece.DrawAgain(canvas, type.Margin, top + y);
            else
                piece.Draw(canvas, type.Margin, top + y);
        }

        DrawFooter(canvas, page);
    }

    private static string PageNumber(int page, int of) => $"Page {page} of {of}";

    private ImmutableArray<ImmutableArray<Placed>> Deal()
    {
        var laterHeight = BodyHeight - headerHeight - type.BlockGap;
        var setter = new Typesetter(type, measure, laterHeight);
        return Pagination.Deal(document.Blocks.SelectMany(block => setter.Set(block, width)), BodyHeight, laterHeight);
    }

    private void DrawHeader(ICanvas canvas)
    {
        canvas.Begin(Role.Artifact);
        canvas.Frame(type.Margin, type.Margin, width, headerHeight, 1.5);
        for (var index = 0; index < header.Length; index++)
        {
            var y = type.Margin + (type.Body / 2) + (index * text.LineHeight(type.Small));
            text.Draw(canvas, header[index], type.Margin + (type.Body / 2), y, type.Small);
        }

        canvas.End();
    }

    private void DrawFooter(ICanvas canvas, int page)
    {
        var number = PageNumber(page + 1, Pages.Length);
        var x = type.Margin + width - measure.Width(number, Small);
        canvas.Begin(Role.Artifact);
        canvas.Line(type.Margin, FooterTop - 2, type.Margin + width, FooterTop - 2, 0.75);
        for (var index = 0; index < footer.Length; index++)
            text.Draw(canvas, footer[index], type.Margin, FooterTop + (index * text.LineHeight(type.Small)), type.Small);
        text.Draw(canvas, new TextLine([new Segment(number, 0, Small)]), x, FooterTop, type.Small);
        canvas.End();
    }
}
