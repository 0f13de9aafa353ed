using System.Text.Json;

namespace HomeLine.Benchmarks.Classic.Unloading;

/// <summary>The GeoJSON layout of the periodic problem with places for unloading: info (fleet, days, limits), features (nodes in order of the matrix), duration (minutes).</summary>
internal static class UnloadingFile
{
    public static bool Looks(string text) => text.TrimStart().StartsWith('{') && text.Contains("intermediateFacility", StringComparison.Ordinal);

    public static UnloadingWeek Read(string name, string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text);
            JsonElement root = document.RootElement, info = root.GetProperty("info");
            UnloadingNode[] nodes = [.. root.GetProperty("features").EnumerateArray().Select(Node)];
            int[][] minutes = [.. root.GetProperty("duration").EnumerateArray().Select(row => row.EnumerateArray().Select(cell => Whole(cell, "duration")).ToArray())];
            if (minutes.Length != nodes.Length || minutes.Any(row => row.Length != nodes.Length)) throw new UnreadableFileException($"duration: a square of {nodes.Length} rows expected");
            var week = new UnloadingWeek(name, Whole(info, "planningHorizon"), Whole(info, "numVehicles"), Whole(info, "maxDuration"), Whole(info, "maxCapacity"), nodes, minutes);
            if (week.Days is < 1 or > 31) throw new UnreadableFileException($"planningHorizon: {week.Days} days");
            int odd = Array.FindIndex(nodes, node => node.Frequency < 0 || (node.Frequency > 0 && week.Days % node.Frequency != 0));
            return odd < 0 ? week : throw new UnreadableFileException($"node {odd}: {nodes[odd].Frequency} visits cannot be spread evenly over {week.Days} days");
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new UnreadableFileException($"not a periodic instance with places for unloading: {fault.Message}", fault);
        }
    }

    /// <summary>The rounds of a solution file of the set: a line "Day: d: Vehicle: …", then one "path" and the nodes.</summary>
    public static IReadOnlyList<(int Day, int[] Nodes)> Solution(string text)
    {
        var rounds = new List<(int, int[])>();
        int day = -1;
        foreach (string line in text.Split('\n'))
        {
            string[] words = line.Split([' ', '\t', '\r', ':'], StringSplitOptions.RemoveEmptyEntries);
            if (words.Length > 3 && words[0] == "Day" && words[2] == "Vehicle") day = int.TryParse(words[1], out int number) ? number : -1;
            else if (words.Length > 1 && words[0] == "path" && day >= 0)
                rounds.Add((day, [.. words.Skip(1).Select(word => double.TryParse(word, System.Globalization.CultureInfo.InvariantCulture, out double node) ? (int)node : throw new UnreadableFileException($"'{word}' is no node"))]));
        }

        return rounds;
    }

    private static UnloadingNode Node(JsonElement feature)
    {
        JsonElement properties = feature.GetProperty("properties");
        return new UnloadingNode(properties.GetProperty("type").GetString() == "intermediateFacility", Whole(properties, "frequency"), Whole(properties, "demand"), Whole(properties, "service"));
    }

    private static int Whole(JsonElement element, string name)
    {
        double number = (element.ValueKind == JsonValueKind.Object ? element.GetProperty(name) : element).GetDouble();
        return number == Math.Floor(number) && Math.Abs(number) < 1e8 ? (int)number : throw new UnreadableFileException($"{name}: {number} is not a whole number in range");
    }
}
