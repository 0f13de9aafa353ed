using System.Globalization;
using System.Text.RegularExpressions;

namespace HomeLine.Benchmarks.Classic.Supplies;

/// <summary>
/// The layout of the technician problem with tools and spare parts: under "CREW COUNT SKILLS TOOLS SPARE PARTS" four numbers, then a line a node: number, x, y, opens,
/// closes, service, and three lists in brackets: skills, tools, parts.
/// </summary>
internal static partial class SupplyFile
{
    public static bool Looks(string text) => text.Contains("CREW COUNT", StringComparison.Ordinal) && text.Contains("SPARE PARTS", StringComparison.Ordinal);

    public static SupplyDay Read(string name, string text)
    {
        string[] lines = text.Split('\n');
        int heading = Array.FindIndex(lines, line => line.StartsWith("CREW COUNT", StringComparison.Ordinal));
        if (heading < 0 || heading + 1 >= lines.Length) throw new UnreadableFileException("no line with the number of people, skills, tools and parts");
        double[] counts = Numbers(lines[heading + 1], heading + 2);
        var nodes = new List<SupplyNode>();
        for (int i = heading + 2; i < lines.Length; i++)
        {
            Match row = Row().Match(lines[i]);
            if (!row.Success) continue;
            double[] numbers = Numbers(row.Groups[1].Value, i + 1);
            if (numbers.Length != 6 || numbers[0] != nodes.Count) throw new UnreadableFileException($"line {i + 1}: node {nodes.Count} with six numbers expected");
            int[] List(int group) => [.. Numbers(row.Groups[group].Value.Replace(',', ' '), i + 1).Select(number => (int)number)];
            nodes.Add(new SupplyNode(new PlaneNode(numbers[1], numbers[2], 0, numbers[3], numbers[4], numbers[5]), List(2), List(3), List(4)));
        }

        if (counts.Length < 4 || counts[0] < 1 || nodes.Count < counts[0] + 2) throw new UnreadableFileException($"{nodes.Count} nodes are too few for the depot, the people and at least one request");
        int kinds = (int)counts[3];
        int odd = nodes.FindIndex(node => node.Parts.Length != 0 && node.Parts.Length != kinds);
        return odd < 0
            ? new SupplyDay(name, (int)counts[0], [.. nodes.Select(node => node.Parts.Length == 0 ? node with { Parts = new int[kinds] } : node)])
            : throw new UnreadableFileException($"node {odd}: {nodes[odd].Parts.Length} parts, {kinds} kinds expected");
    }

    /// <summary>
    /// The routes of a solution file of the set, as nodes without the home: the second line has a route a person between bars; behind the requests the file numbers the
    /// people's homes once more, and behind those a visit of each person to the depot.
    /// </summary>
    public static IReadOnlyList<(int Person, int[] Nodes)> Solution(SupplyDay day, string text)
    {
        string[] lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        if (lines.Length < 2) throw new UnreadableFileException("two lines expected: the value and the routes");
        var routes = new List<(int, int[])>();
        foreach (string route in lines[1].Trim().Trim('<', '>').Split('|', StringSplitOptions.RemoveEmptyEntries))
        {
            int[] numbers = [.. Numbers(route.Replace(',', ' '), 2).Select(number => (int)number)];
            int[] nodes = [.. numbers.Skip(1).Where(number => number < day.Nodes.Count || number >= day.Nodes.Count + day.People).Select(number => number < day.Nodes.Count ? number : 0)];
            if (nodes.Length > 0) routes.Add((numbers[0], nodes));
        }

        return routes;
    }

    private static double[] Numbers(string text, int line) => [.. text.Split([' ', '\t', '\r'], StringSplitOptions.RemoveEmptyEntries)
        .Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : throw new UnreadableFileException($"line {line}: '{word}' is not a number"))];

    [GeneratedRegex(@"^([^\[]*)\[([^\]]*)\]\s*\[([^\]]*)\]\s*\[([^\]]*)\]\s*$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Row();
}
