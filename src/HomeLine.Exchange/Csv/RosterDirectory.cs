namespace HomeLine.Exchange.Csv;

/// <summary>A folder on disk. Only files ending in <c>.csv</c> count; folders inside it are not looked at.</summary>
public sealed class RosterDirectory : IRosterFiles
{
    private readonly string path;

    public RosterDirectory(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        this.path = path;
        Names = Directory.Exists(path)
            ? [.. Directory.EnumerateFiles(path, "*.csv").Select(Path.GetFileName).OfType<string>().Order(StringComparer.Ordinal)]
            : [];
    }

    public IReadOnlyCollection<string> Names { get; }

    public FileContent Open(string name)
    {
        // Only names that were listed are opened, so a name with a path in it never leaves the folder.
        if (!Names.Contains(name)) return new FileContent(default, "This file is not in the folder.");
        var file = new FileInfo(Path.Combine(path, name));
        if (!file.Exists) return new FileContent(default, "This file has gone since the folder was listed.");
        if (file.Length > ReadingLimits.FileBytes) return new FileContent(default, ReadingLimits.TooLarge(file.Length));
        try
        {
            return new FileContent(File.ReadAllBytes(file.FullName));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new FileContent(default, "This file cannot be read; another program may hold it.");
        }
    }
}
