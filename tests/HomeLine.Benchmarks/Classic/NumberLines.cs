using System.Globalization;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Lines of numbers with their line numbers, and clear words when they are not numbers.</summary>
internal sealed record NumberLine(int Line, double[] Numbers)
{
    /// <summary>All lines that are not blank; a line with anything but numbers gets no numbers.</summary>
    public static List<NumberLine> All(string text)
    {
        var lines = new List<NumberLine>();
        string[] raw = text.Split('\n');
        for (int i = 0; i < raw.Length; i++)
        {
            string[] words = raw[i].Split([' ', '\t', '\r', ';', ','], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0) continue;
            var numbers = new double[words.Length];
            bool all = true;
            for (int w = 0; w < words.Length && all; w++) all = double.TryParse(words[w], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[w]);
            lines.Add(new NumberLine(i + 1, all ? numbers : []));
        }

        return lines;
    }

    public int Whole(int column)
    {
        if (column >= Numbers.Length) throw new UnreadableFileException($"line {Line}: {Numbers.Length} numbers, at least {column + 1} expected");
        double number = Numbers[column];
        if (number != Math.Floor(number) || Math.Abs(number) > 1e9) throw new UnreadableFileException($"line {Line}, column {column + 1}: {number} is not a whole number in range");
        return (int)number;
    }

    public double At(int column) => column < Numbers.Length
        ? Numbers[column]
        : throw new UnreadableFileException($"line {Line}: {Numbers.Length} numbers, at least {column + 1} expected");
}
