using System.Collections.Immutable;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>A piece at its height on a page, in points below the top of the page's room for blocks.</summary>
/// <param name="Piece">What is drawn.</param>
/// <param name="Y">Its top.</param>
/// <param name="Again">A header row that returns: drawn as decoration.</param>
internal readonly record struct Placed(Piece Piece, double Y, bool Again = false);

/// <summary>Deals pieces out to pages. Pieces that keep with the next move together unless they fill more than a page.</summary>
internal static class Pagination
{
    /// <param name="pieces">In reading order.</param>
    /// <param name="firstHeight">Room on the first page, in points.</param>
    /// <param name="laterHeight">Room on every other page, in points.</param>
    public static ImmutableArray<ImmutableArray<Placed>> Deal(IEnumerable<Piece> pieces, double firstHeight, double laterHeight)
    {
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<Placed>>();
        var page = new List<Placed>();
        var y = 0.0;
        double Room() => pages.Count == 0 ? firstHeight : laterHeight;
        void Turn()
        {
            pages.Add([.. page]);
            page.Clear();
            y = 0;
        }

        foreach (var group in Groups(pieces))
        {
            if (page.Count > 0 && y + GroupHeight(group) > Room() && GroupHeight(group) <= laterHeight)
                Turn();
            foreach (var piece in group)
            {
                if (page.Count > 0 && y + piece.SpaceBefore + piece.Height > Room())
                    Turn();
                y = Place(page, piece, y, startsLaterPage: pages.Count > 0 && page.Count == 0);
            }
        }

        Turn();
        return pages.ToImmutable();
    }

    private static double Place(List<Placed> page, Piece piece, double y, bool startsLaterPage)
    {
        if (startsLaterPage && piece.Repeats is { } header)
        {
            page.Add(new Placed(header, y, Again: true));
            y += header.Height;
        }
        else if (page.Count > 0)
        {
            y += piece.SpaceBefore;
        }

        page.Add(new Placed(piece, y));
        return y + piece.Height;
    }

    private static double GroupHeight(List<Piece> group) => group.Sum(piece => piece.SpaceBefore + piece.Height);

    private static IEnumerable<List<Piece>> Groups(IEnumerable<Piece> pieces)
    {
        var group = new List<Piece>();
        foreach (var piece in pieces)
        {
            group.Add(piece);
            if (piece.KeepWithNext)
                continue;
            yield return group;
            group = [];
        }

        if (group.Count > 0)
            yield return group;
    }
}
