using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Pieces one below another, drawn as one.</summary>
internal sealed record Stack(ImmutableArray<Piece> Pieces)
{
    /// <summary>Height in points; the first piece's room above does not count.</summary>
    public double Height => Pieces.Select((piece, index) => piece.Height + (index == 0 ? 0 : piece.SpaceBefore)).Sum();

    public void Draw(ICanvas canvas, double x, double y)
    {
        for (var index = 0; index < Pieces.Length; index++)
        {
            if (index > 0)
                y += Pieces[index].SpaceBefore;
            Pieces[index].Draw(canvas, x, y);
            y += Pieces[index].Height;
        }
    }
}
