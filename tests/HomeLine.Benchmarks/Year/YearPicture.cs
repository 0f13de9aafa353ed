using System.Globalization;
using System.Text;

namespace HomeLine.Benchmarks.Year;

/// <summary>A drawing of the year: each measure with a bar for each way of planning, every bar with its name and figure. Shades differ in grey print too.</summary>
internal static class YearPicture
{
    private const int Width = 820, Left = 250, Bar = 16, Gap = 34, Longest = 420, Top = 20;
    private static readonly string[] Shades = ["#0b5d5e", "#5d9a97", "#b9c7c2", "#7d8f8a"];

    private static readonly (string Name, Func<YearFigures, double> Of, string Unit)[] Measures =
    [
        ("Hours that care stood late", f => f.LateHours, "h"),
        ("Ordered days missed", f => f.MissedOrders, ""),
        ("Kilometres driven", f => f.Kilometres, "km"),
        ("Nurse-days on the road", f => f.Days, ""),
        ("Hours of overtime", f => f.OvertimeHours, "h"),
        ("Share by the same nurse", f => Math.Round(100 * f.Continuity), "%"),
    ];

    public static string Of(List<YearFigures> all)
    {
        int height = Top + (Measures.Length * ((all.Count * Bar) + Gap));
        var svg = new StringBuilder();
        svg.AppendLine(Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {height}\" role=\"img\" aria-label=\"An invented year: what each way of planning did\" font-family=\"sans-serif\" font-size=\"13\">"));
        svg.AppendLine(Invariant($"<rect width=\"{Width}\" height=\"{height}\" fill=\"#ffffff\"/>"));
        int y = Top;
        foreach (var (name, of, unit) in Measures)
        {
            double most = Math.Max(1, all.Max(of));
            svg.AppendLine(Invariant($"<text x=\"{Left}\" y=\"{y + 10}\" font-weight=\"bold\">{name}</text>"));
            y += 16;
            foreach (var (figures, i) in all.Select((f, i) => (f, i)))
            {
                double width = Math.Max(1, Longest * of(figures) / most);
                svg.AppendLine(Invariant($"<text x=\"{Left - 8}\" y=\"{y + 12}\" text-anchor=\"end\">{figures.Name}</text>"));
                svg.AppendLine(Invariant($"<rect x=\"{Left}\" y=\"{y + 1}\" width=\"{width:0.0}\" height=\"{Bar - 3}\" fill=\"{Shades[i % Shades.Length]}\"/><text x=\"{Left + width + 6:0.0}\" y=\"{y + 12}\">{of(figures):#,0} {unit}</text>"));
                y += Bar;
            }

            y += Gap - 16;
        }

        return svg.AppendLine("</svg>").ToString();
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
