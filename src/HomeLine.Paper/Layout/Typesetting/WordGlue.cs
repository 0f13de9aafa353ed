using System.Collections.Frozen;

namespace HomeLine.Paper.Layout.Typesetting;

/// <summary>Pairs that a line end would make hard to read: <c>11:00 am</c>, <c>March 9</c>, <c>38.0 °C</c>, <c>Night 555-0102</c>.</summary>
internal static class WordGlue
{
    private static readonly FrozenSet<string> AfterNumber = FrozenSet.ToFrozenSet(["am", "pm", "°F", "°C", "km"]);
    private static readonly FrozenSet<string> BeforeNumber = FrozenSet.ToFrozenSet(
    [
        "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December",
        "Sheet", "sheet", "version", "Phone", "Day", "Night", "call", "Coordinator", "Emergency",
    ]);

    /// <summary>The words of a text; a glued pair counts as one word with its space inside.</summary>
    public static IEnumerable<string> Split(string text)
    {
        var glued = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (glued.Length > 0 && !Holds(glued, word))
            {
                yield return glued;
                glued = "";
            }

            glued = glued.Length == 0 ? word : $"{glued} {word}";
        }

        if (glued.Length > 0)
            yield return glued;
    }

    private static bool Holds(string before, string after) =>
        (char.IsAsciiDigit(before[^1]) && AfterNumber.Contains(after.TrimEnd('.', ',', ';', ':', ')')))
        || (BeforeNumber.Contains(before) && char.IsAsciiDigit(after[0]));
}
