namespace HomeLine.Benchmarks.Classic;

/// <summary>
/// The layout of the technician problem with skill levels: a heading and a line a task: number, x, y, demand, opens, closes, service, price column (not used), then how many
/// people of at least level L in skill K it needs. The people are in a file of their own, a line each: number, level in each skill.
/// </summary>
internal static class TechnicianFile
{
    public static bool Looks(string text) => text.StartsWith("Capacity:", StringComparison.OrdinalIgnoreCase) && text.Contains("d11", StringComparison.Ordinal);

    /// <param name="path">The task file.</param>
    /// <param name="text">Its text.</param>
    /// <param name="crew">The file of the people; null looks for technicians_NAME beside the tasks and in the sibling folder "technicians".</param>
    /// <param name="distance">Convention.</param>
    public static TechnicianInstance Read(string path, string text, string? crew, Distance distance)
    {
        string name = Path.GetFileNameWithoutExtension(path), folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".";
        string file = $"technicians_{name}.txt";
        string people = crew ?? new[] { Path.Combine(folder, file), Path.Combine(folder, "..", "technicians", file) }.FirstOrDefault(File.Exists)
            ?? throw new UnreadableFileException($"the people are missing: neither {file} beside the tasks nor in a folder 'technicians'; name their file with --other");
        int[][] levels = [.. NumberLine.All(AnyFile.Text(people)).Where(line => line.Numbers.Length > 2).Select(line => line.Numbers.Skip(1).Select(level => (int)level).ToArray())];
        NumberLine[] rows = [.. NumberLine.All(text).Where(line => line.Numbers.Length > 8)];
        if (levels.Length == 0 || rows.Length < 2) throw new UnreadableFileException("no people or no tasks");
        int skills = levels[0].Length, depth = (rows[0].Numbers.Length - 8) / skills;
        foreach (NumberLine row in rows.Where(row => row.Numbers.Length != 8 + (skills * depth)))
            throw new UnreadableFileException($"line {row.Line}: {row.Numbers.Length} numbers, {8 + (skills * depth)} expected for {skills} skills");
        return new TechnicianInstance(name, [.. rows.Select(row => Task(row, skills, depth))], levels, distance);
    }

    private static TechnicianTask Task(NumberLine row, int skills, int depth)
    {
        int[] needed = [.. Enumerable.Range(0, skills).Select(skill => Enumerable.Range(1, depth).Where(level => row.At(7 + (skill * depth) + level) > 0).DefaultIfEmpty(0).Max())];
        return new TechnicianTask(new PlaneNode(row.At(1), row.At(2), 0, row.At(4), row.At(5), row.At(6)), needed, row.Numbers.Skip(8).Sum());
    }
}

/// <summary>A task: the level it needs in each skill, and the sum of its requirement entries.</summary>
internal sealed record TechnicianTask(PlaneNode Plane, int[] Needed, double Requirements)
{
    /// <summary>Price of leaving it to somebody else, as the authors note.</summary>
    public double Price => 200 + Math.Pow(Requirements, 1.5);
}
