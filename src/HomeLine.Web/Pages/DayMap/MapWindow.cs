using System.Globalization;
using HomeLine.Agency.Roster;

namespace HomeLine.Web.Pages.DayMap;

/// <summary>The part of the map that is looked at, kilometres; north is up.</summary>
/// <param name="Width">Width of the whole map.</param>
/// <param name="Height">Height of the whole map.</param>
/// <param name="X">Western edge of the part.</param>
/// <param name="Y">Southern edge of the part.</param>
/// <param name="Zoom">1 for the whole map, 2 for a quarter of it, up to 16.</param>
public sealed record MapWindow(double Width, double Height, double X, double Y, double Zoom)
{
    private const double Most = 16;

    /// <summary>Drawing units to a kilometre.</summary>
    private const double Scale = 20;

    public static MapWindow Whole(AgencyMap map) => new(map.Width, map.Height, 0, 0, 1);

    /// <summary>Around some points, with a margin; the whole map when there are none.</summary>
    public static MapWindow Around(AgencyMap map, IReadOnlyCollection<MapPoint> points)
    {
        if (points.Count == 0) return Whole(map);
        double west = points.Min(p => p.X), east = points.Max(p => p.X), south = points.Min(p => p.Y), north = points.Max(p => p.Y);
        double zoom = Math.Clamp(Math.Min(map.Width / (east - west + 4), map.Height / (north - south + 4)), 1, Most);
        return (Whole(map) with { Zoom = zoom }).Centred((west + east) / 2, (south + north) / 2);
    }

    /// <summary>Nearer or farther around the middle of the part.</summary>
    public MapWindow Zoomed(double times) => (this with { Zoom = Math.Clamp(Zoom * times, 1, Most) }).Centred(X + (Width / Zoom / 2), Y + (Height / Zoom / 2));

    /// <summary>A quarter of the part to a side.</summary>
    public MapWindow Moved(int east, int north) => Centred(X + (Width / Zoom * (0.5 + (0.25 * east))), Y + (Height / Zoom * (0.5 + (0.25 * north))));

    public string ViewBox => string.Join(' ', new[] { Across(X), Down(Y + (Height / Zoom)), Width / Zoom * Scale, Height / Zoom * Scale }.Select(Text));

    /// <summary>Edges of the part in drawing units: left, top, right, bottom.</summary>
    public (double Left, double Top, double Right, double Bottom) Edges =>
        (Across(X), Down(Y + (Height / Zoom)), Across(X + (Width / Zoom)), Down(Y));

    /// <summary>Drawing unit of a kilometre east.</summary>
    public static double Across(double x) => x * Scale;

    /// <summary>Drawing unit of a kilometre north.</summary>
    public double Down(double y) => (Height - y) * Scale;

    /// <summary>So many units on the screen stay the same at every zoom.</summary>
    public double OnScreen(double units) => units / Zoom;

    public string Points(IEnumerable<MapPoint> line) => string.Join(' ', line.Select(p => $"{Text(Across(p.X))},{Text(Down(p.Y))}"));

    public static string Text(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);

    private MapWindow Centred(double x, double y) => this with
    {
        X = Math.Clamp(x - (Width / Zoom / 2), 0, Width - (Width / Zoom)),
        Y = Math.Clamp(y - (Height / Zoom / 2), 0, Height - (Height / Zoom)),
    };
}
