using System.Collections.Immutable;

namespace HomeLine.Exchange.Csv;

/// <summary>Files held in memory: an upload, or an export on its way out.</summary>
public sealed class RosterFileSet : IRosterFiles
{
    private readonly ImmutableSortedDictionary<string, ReadOnlyMemory<byte>> files;

    public RosterFileSet(IEnumerable<KeyValuePair<string, ReadOnlyMemory<byte>>> files) =>
        this.files = ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, files);

    public IReadOnlyCollection<string> Names => [.. files.Keys];

    public FileContent Open(string name) =>
        files.TryGetValue(name, out ReadOnlyMemory<byte> bytes)
            ? new FileContent(bytes)
            : new FileContent(default, "This file was not uploaded.");

    /// <summary>The same files with one replaced or added.</summary>
    public RosterFileSet With(string name, ReadOnlyMemory<byte> bytes) => new(files.SetItem(name, bytes));
}
