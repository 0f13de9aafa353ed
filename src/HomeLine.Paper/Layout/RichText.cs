using System.Collections.Immutable;

namespace HomeLine.Paper.Layout;

/// <summary>A stretch of text in one weight.</summary>
/// <param name="Text">The words.</param>
/// <param name="Strong">Bold. The only emphasis there is: slanted text and capitals are harder to read.</param>
public readonly record struct Run(string Text, bool Strong = false);

/// <summary>Text with some stretches in bold.</summary>
public readonly record struct RichText(ImmutableArray<Run> Runs)
{
    public static implicit operator RichText(string text) => new([new Run(text)]);

    /// <summary>All bold.</summary>
    public static RichText Strong(string text) => new([new Run(text, true)]);

    /// <summary>A bold label, then its value.</summary>
    public static RichText Labelled(string label, string value) => new([new Run(label, true), new Run(" " + value)]);

    /// <summary>The words alone.</summary>
    public string Plain => string.Concat(Runs.Select(run => run.Text));
}
