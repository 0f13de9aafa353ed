using System.Collections.Immutable;
using HomeLine.Agency.Roster;

namespace HomeLine.Web.Pages.DayMap;

/// <summary>A word on the map.</summary>
/// <param name="Text">The word.</param>
/// <param name="X">Where it begins, drawing units.</param>
/// <param name="Y">Its foot, drawing units.</param>
/// <param name="Look">Its class.</param>
public sealed record MapLabel(string Text, double X, double Y, string Look);

/// <summary>Puts words beside their dots so that none covers another; a word without room appears when one goes nearer. The list beside has them all.</summary>
public static class MapLabels
{
    private const double Letter = 0.62;

    /// <param name="window">The part looked at.</param>
    /// <param name="wanted">Words with their points and classes, the most important first.</param>
    /// <param name="size">Height of a letter on the screen, drawing units at zoom 1.</param>
    /// <param name="gap">Distance from the dot, drawing units at zoom 1.</param>
    /// <param name="dots">Points no word may cover.</param>
    public static ImmutableArray<MapLabel> Place(MapWindow window, IEnumerable<(string Text, MapPoint At, string Look)> wanted, double size, double gap, IEnumerable<MapPoint>? dots = null)
    {
        var taken = new List<(double Left, double Top, double Right, double Bottom)>();
        var placed = ImmutableArray.CreateBuilder<MapLabel>();
        double high = window.OnScreen(size), away = window.OnScreen(gap), dot = away * 0.7;
        foreach (MapPoint at in dots ?? [])
            taken.Add((MapWindow.Across(at.X) - dot, window.Down(at.Y) - dot, MapWindow.Across(at.X) + dot, window.Down(at.Y) + dot));
        (double edgeLeft, double edgeTop, double edgeRight, double edgeBottom) = window.Edges;
        foreach ((string text, MapPoint at, string look) in wanted)
        {
            double x = MapWindow.Across(at.X), y = window.Down(at.Y), wide = text.Length * high * Letter;
            foreach ((double left, double foot) in ((double, double)[])
                [(x + away, y + (high / 3)), (x - away - wide, y + (high / 3)), (x - (wide / 2), y - away), (x - (wide / 2), y + away + high)])
            {
                var box = (Left: left, Top: foot - high, Right: left + wide, Bottom: foot);
                if (box.Left < edgeLeft || box.Right > edgeRight || box.Top < edgeTop || box.Bottom > edgeBottom) continue;
                if (taken.Any(t => box.Left < t.Right && box.Right > t.Left && box.Top < t.Bottom && box.Bottom > t.Top)) continue;
                taken.Add(box);
                placed.Add(new MapLabel(text, left, foot, look));
                break;
            }
        }

        return placed.ToImmutable();
    }
}
