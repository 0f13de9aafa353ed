namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// Cordeau's layout for the periodic and the multi-depot problem: "type vehicles customers t", t lines "longest duration, capacity", then a line a node:
/// number, x, y, service, demand, visits, number of patterns, the patterns, opens, closes. A file with one node line more than customers is periodic (base first);
/// one with t lines more has t bases last. The line count decides, because the type of some files is wrong.
/// </summary>
internal static class CordeauFile
{
    public static bool Looks(string text)
    {
        List<NumberLine> lines = NumberLine.All(text);
        return lines.Count > 2 && lines[0].Numbers.Length == 4 && lines[0].Numbers[0] is >= 0 and <= 7 && lines[1].Numbers.Length == 2;
    }

    public static CordeauInstance Read(string name, string text, Distance distance)
    {
        List<NumberLine> lines = NumberLine.All(text);
        if (lines.Count == 0 || lines[0].Numbers.Length < 4) throw new UnreadableFileException("line 1: four numbers expected: type, vehicles, customers, days or depots");
        int vehicles = lines[0].Whole(1), customers = lines[0].Whole(2), groups = lines[0].Whole(3);
        int nodes = lines.Count - 1 - groups;
        if (groups is < 1 or > 20 || customers < 1) throw new UnreadableFileException($"line {lines[0].Line}: {customers} customers and {groups} days or depots");
        bool periodic = nodes == customers + 1;
        if (!periodic && nodes != customers + groups) throw new UnreadableFileException($"{nodes} node lines; {customers + 1} (periodic) or {customers + groups} (several depots) expected");
        List<CordeauNode> all = [.. lines.Skip(1 + groups).Select(line => Node(line, groups))];
        return new CordeauInstance(
            name,
            periodic,
            vehicles,
            [.. lines.Skip(1).Take(groups).Select(line => (line.At(0), line.At(1)))],
            periodic ? all[1..] : all[..customers],
            periodic ? [.. Enumerable.Repeat(all[0].Plane, groups)] : [.. all[customers..].Select(node => node.Plane)],
            distance);
    }

    private static CordeauNode Node(NumberLine line, int groups)
    {
        int patterns = line.Whole(6);
        if (patterns < 0 || line.Numbers.Length != 9 + patterns) throw new UnreadableFileException($"line {line.Line}: {line.Numbers.Length} numbers, {9 + patterns} expected for {patterns} patterns");
        int[] masks = new int[patterns];
        for (int p = 0; p < patterns; p++) masks[p] = Days(line.Whole(7 + p), groups, line.Line);
        return new CordeauNode(
            line.Whole(0),
            new PlaneNode(line.At(1), line.At(2), line.At(4), line.At(7 + patterns), line.At(8 + patterns), line.At(3)),
            line.Whole(5),
            masks);
    }

    // The leftmost of t bits is day 1; here bit 0 is day 0.
    private static int Days(int pattern, int groups, int line)
    {
        if (pattern <= 0 || pattern >= 1 << groups) throw new UnreadableFileException($"line {line}: pattern {pattern} does not fit {groups} days or depots");
        int mask = 0;
        for (int day = 0; day < groups; day++)
            if ((pattern >> (groups - 1 - day) & 1) != 0) mask |= 1 << day;
        return mask;
    }
}

/// <summary>A customer as the file has it; bit d of a pattern is day (or depot) d from 0.</summary>
internal sealed record CordeauNode(int Number, PlaneNode Plane, int Visits, int[] Patterns);
