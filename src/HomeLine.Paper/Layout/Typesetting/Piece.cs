using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>The smallest thing that is never cut by a page end: a line, a table row, a box.</summary>
internal sealed record Piece
{
    /// <summary>Room above, in points; dropped at the top of a page.</summary>
    public double SpaceBefore { get; init; }
    public required double Height { get; init; }

    /// <summary>Must not be the last on its page.</summary>
    public bool KeepWithNext { get; init; }

    /// <summary>Structure elements opened before painting.</summary>
    public ImmutableArray<Role> Opens { get; init; } = [];

    /// <summary>Number of structure elements closed after painting, those left open by painting itself included.</summary>
    public int Closes { get; init; }

    /// <summary>Draws it with its top left corner at the given point.</summary>
    public required Action<ICanvas, double, double> Paint { get; init; }

    /// <summary>Drawn again above this piece when it opens a page: the header row of its table.</summary>
    public Piece? Repeats { get; init; }

    /// <summary>Draws it with its structure.</summary>
    public void Draw(ICanvas canvas, double x, double y)
    {
        foreach (var role in Opens)
            canvas.Begin(role);
        Paint(canvas, x, y);
        for (var closed = 0; closed < Closes; closed++)
            canvas.End();
    }

    /// <summary>Draws it as decoration, outside the structure.</summary>
    public void DrawAgain(ICanvas canvas, double x, double y)
    {
        canvas.Begin(Role.Artifact);
        Paint(new Unstructured(canvas), x, y);
        canvas.End();
    }
}
