using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HomeLine.Agency.Roster;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>The most visits of a kind a nurse makes, written as <c>SOC 2 a day; heavy 4 a week</c>.</summary>
internal static partial class VisitCapCell
{
    private const string Column = "visit_caps";
    private const int MostMeaningful = 99;

    /// <summary>One part of the cell; empty after noting the problem.</summary>
    public static KindCap? Read(Row row, string part)
    {
        Match match = Shape().Match(part);
        if (!match.Success)
        {
            row.Refuse(Column, part, $"Write a skill word or {KindCap.Heavy}, a number from 0 to {MostMeaningful}, and a day or a week, for example SOC 2 a day.");
            return null;
        }

        var cap = new KindCap(
            match.Groups["kind"].Value, int.Parse(match.Groups["most"].ValueSpan, CultureInfo.InvariantCulture), match.Groups["span"].Value.Equals("week", StringComparison.OrdinalIgnoreCase));
        if (cap.Kind != KindCap.Heavy && !row.List("skills").Contains(cap.Kind))
            row.Refuse(Column, part, "This skill is not among the skills of the nurse, so she makes no such visit.");
        if (row.Parts(Column).Count(other => Shape().Match(other) is { Success: true } m && m.Groups["kind"].Value == cap.Kind && m.Groups["span"].Value.Equals(match.Groups["span"].Value, StringComparison.OrdinalIgnoreCase)) > 1)
            row.Refuse(Column, part, "This kind has two caps for the same time. Give one.");
        return cap;
    }

    public static string Write(ImmutableArray<KindCap> caps) => caps.IsDefaultOrEmpty
        ? ""
        : string.Join("; ", caps.Select(cap => string.Create(CultureInfo.InvariantCulture, $"{cap.Kind} {cap.Most} a {(cap.AWeek ? "week" : "day")}")));

    [GeneratedRegex(@"^(?<kind>[^\s;]{1,32}) +(?<most>[0-9]{1,2}) +a +(?<span>day|week)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Shape();
}
