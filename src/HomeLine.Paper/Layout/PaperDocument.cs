using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Paper.Layout;

/// <summary>A sheet before it is drawn: what it says, in reading order, and how large. Knows nothing of any file format.</summary>
public sealed record PaperDocument
{
    /// <summary>Shown in the window's title; says which sheet it is.</summary>
    public required string Title { get; init; }

    /// <summary>Language of the text, as a BCP 47 tag.</summary>
    public required string Language { get; init; }
    public required PaperSize Size { get; init; }
    public required Typography Typography { get; init; }

    /// <summary>The same sizes set closer and closer; the first that saves a page is used, if any does.</summary>
    public ImmutableArray<Typography> Closer { get; init; } = [];

    /// <summary>When it was printed, by the wall clock of the branch; also the file's creation date.</summary>
    public required LocalDateTime PrintedAt { get; init; }

    /// <summary>Boxed at the top of every page but the first, which says the same in its text.</summary>
    public required string RunningHeader { get; init; }

    /// <summary>At the foot of every page, before the page number.</summary>
    public required string Footer { get; init; }
    public required ImmutableArray<Block> Blocks { get; init; }
}
