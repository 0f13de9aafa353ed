namespace HomeLine.Exchange.Csv;

/// <summary>The files of one roster, wherever they come from: a folder, an upload, or an export held in memory.</summary>
public interface IRosterFiles
{
    /// <summary>Names without a path, for example <c>patients.csv</c>.</summary>
    IReadOnlyCollection<string> Names { get; }

    /// <summary>The whole content, or the reason why it cannot be had.</summary>
    FileContent Open(string name);
}

/// <summary>A file's bytes, or why there are none.</summary>
/// <param name="Bytes">The content; empty when refused.</param>
/// <param name="Refused">The reason, one plain sentence; empty when the content is there.</param>
public readonly record struct FileContent(ReadOnlyMemory<byte> Bytes, string? Refused = null);
