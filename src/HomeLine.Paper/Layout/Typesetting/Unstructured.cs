namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Draws on a canvas but adds nothing to the document's structure.</summary>
internal sealed class Unstructured(ICanvas canvas) : ICanvas
{
    public void Text(string text, double x, double baseline, TextStyle style, bool white = false) =>
        canvas.Text(text, x, baseline, style, white);

    public void Line(double x1, double y1, double x2, double y2, double thickness) => canvas.Line(x1, y1, x2, y2, thickness);

    public void Frame(double x, double y, double width, double height, double thickness) =>
        canvas.Frame(x, y, width, height, thickness);

    public void Fill(double x, double y, double width, double height) => canvas.Fill(x, y, width, height);

    public void Begin(Role role)
    {
        // Nothing: the caller has opened one element for all of it.
    }

    public void End()
    {
        // Nothing, as in Begin.
    }
}
