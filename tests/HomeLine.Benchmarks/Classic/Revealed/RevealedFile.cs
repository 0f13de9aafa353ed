namespace HomeLine.Benchmarks.Classic.Revealed;

/// <summary>
/// Lackner's layout: a line a request, its number and when it arrives (-1: before the day). NAME_einf_S_D_in.txt belongs to the one-day instance NAME.txt, looked for beside
/// it and in the sibling folder "solomon".
/// </summary>
internal static class RevealedFile
{
    public static bool Looks(string text)
    {
        List<NumberLine> lines = NumberLine.All(text);
        return lines.Count > 0 && lines.All(line => line.Numbers.Length == 2) && lines.Any(line => line.Numbers[1] == -1);
    }

    public static RevealedInstance Read(string path, string text, string? other, Distance distance)
    {
        string name = Path.GetFileNameWithoutExtension(path), folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".";
        string file = $"{name.Split('_')[0]}.txt";
        string instance = other ?? new[] { Path.Combine(folder, file), Path.Combine(folder, "..", "solomon", file) }.FirstOrDefault(File.Exists)
            ?? throw new UnreadableFileException($"the requests are missing: {file} is neither beside the file nor in a folder 'solomon'; name it with --other");
        VrptwInstance day = SolomonFile.Read(name, AnyFile.Text(instance), distance);
        double[] known = new double[day.Nodes.Count];
        Array.Fill(known, double.NaN);
        known[0] = -1;
        foreach (NumberLine line in NumberLine.All(text))
        {
            int node = line.Whole(0);
            if (node < 1 || node >= known.Length) throw new UnreadableFileException($"line {line.Line}: request {node} is not in {file}");
            known[node] = line.At(1);
        }

        int missing = Array.FindIndex(known, double.IsNaN);
        return missing < 0
            ? new RevealedInstance(name, new RevealedDay(day.Nodes, day.Vehicles, day.Capacity, known, distance))
            : throw new UnreadableFileException($"request {missing} has no line");
    }
}
