using System.Collections.Immutable;
using System.Reflection;

namespace HomeLine.Exchange.History;

/// <summary>A history to begin with, and what it shows.</summary>
/// <param name="Id">Stable name, for an address.</param>
/// <param name="Title">What it shows, one line.</param>
/// <param name="Text">The rows.</param>
public sealed record HistoryExample(string Id, string Title, string Text);

/// <summary>Worked examples, all invented; the same that the tests of the clocks work by hand.</summary>
public static class HistoryExamples
{
    public static ImmutableArray<HistoryExample> All { get; } = [.. Read()];

    private static IEnumerable<HistoryExample> Read()
    {
        Assembly here = typeof(HistoryExamples).Assembly;
        foreach (string name in here.GetManifestResourceNames().Where(name => name.Length > 3 && char.IsAsciiDigit(name[0])).Order(StringComparer.Ordinal))
        {
            using var reader = new StreamReader(here.GetManifestResourceStream(name)!);
            string text = reader.ReadToEnd();
            string title = text.Split('\n', 2)[0].TrimStart('#', ' ').Trim();
            yield return new HistoryExample(name[3..], title, text);
        }
    }
}
