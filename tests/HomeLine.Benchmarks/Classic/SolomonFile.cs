namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// Solomon's text layout: a name, the words VEHICLE and CUSTOMER with their headings, "number capacity", and a line of seven numbers a node: number, x, y,
/// demand, ready time, due date, service time; node 0 is the base.
/// </summary>
internal static class SolomonFile
{
    public static bool Looks(string text) => text.Contains("VEHICLE", StringComparison.OrdinalIgnoreCase) && text.Contains("CUSTOMER", StringComparison.OrdinalIgnoreCase);

    public static VrptwInstance Read(string name, string text, Distance distance)
    {
        List<NumberLine> lines = NumberLine.All(text);
        NumberLine fleet = lines.FirstOrDefault(line => line.Numbers.Length == 2)
            ?? throw new UnreadableFileException("no line with the number of vehicles and their capacity");
        NumberLine[] rows = [.. lines.Where(line => line.Line > fleet.Line && line.Numbers.Length > 0)];
        if (rows.Length < 1) throw new UnreadableFileException("no customers");
        for (int i = 0; i < rows.Length; i++)
        {
            if (rows[i].Numbers.Length != 7) throw new UnreadableFileException($"line {rows[i].Line}: {rows[i].Numbers.Length} numbers, 7 expected");
            if (rows[i].Whole(0) != i) throw new UnreadableFileException($"line {rows[i].Line}: node {rows[i].Whole(0)}, {i} expected");
            if (rows[i].At(4) > rows[i].At(5)) throw new UnreadableFileException($"line {rows[i].Line}: the window closes before it opens");
        }

        return new VrptwInstance(
            name,
            fleet.Whole(0),
            fleet.Whole(1),
            [.. rows.Select(row => new PlaneNode(row.At(1), row.At(2), row.At(3), row.At(4), row.At(5), row.At(6)))],
            distance);
    }
}
