using System.Globalization;

namespace HomeLine.Benchmarks.Classic;

/// <summary>The best-known values beside a set: rows of "instance, n, vehicles, distance, convention, …".</summary>
internal sealed class BestKnown
{
    private readonly Dictionary<(string Instance, string Convention), double> _values = [];

    /// <summary>Reads a folder's list; a folder without one knows nothing.</summary>
    public static BestKnown Of(string folder)
    {
        var known = new BestKnown();
        string path = Path.Combine(folder, "bks.csv");
        if (!File.Exists(path)) return known;
        foreach (string line in File.ReadLines(path).Skip(1))
        {
            List<string> cells = Cells(line);
            if (cells.Count >= 5 && double.TryParse(cells[3], NumberStyles.Float, CultureInfo.InvariantCulture, out double value)) known._values[(cells[0], cells[4])] = value;
        }

        return known;
    }

    /// <summary>The value whose convention begins with the words given, or null.</summary>
    public double? Value(string instance, string convention)
    {
        foreach (((string name, string words), double value) in _values)
            if (name == instance && words.StartsWith(convention, StringComparison.Ordinal))
                return value;
        return null;
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new System.Text.StringBuilder();
        bool quoted = false;
        foreach (char letter in line)
        {
            if (letter == '"') quoted = !quoted;
            else if (letter == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else cell.Append(letter);
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
