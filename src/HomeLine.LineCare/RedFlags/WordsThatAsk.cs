using System.Collections.Immutable;

namespace HomeLine.LineCare.RedFlags;

/// <summary>Words in free text that bring a question of the screen. A hit asks; it never answers and never decides.</summary>
public static class WordsThatAsk
{
    /// <summary>Beginnings of words, in lower case, and the question each brings.</summary>
    private static readonly (string Start, string Question)[] Starts =
    [
        ("breath", "breathing"), ("gasp", "breathing"), ("chest", "chest-pain"), ("faint", "fainting"), ("dizz", "fainting"), ("collaps", "fainting"),
        ("confus", "confusion"), ("seiz", "seizure"), ("wheez", "wheeze"), ("hive", "hives"), ("itch", "hives"), ("bleed", "bleeding"), ("bled", "bleeding"),
        ("broke", "line-broken"), ("snap", "line-broken"), ("crack", "line-broken"), ("bubble", "air"), ("numb", "one-sided"),
        ("fever", "fever"), ("temperature", "fever"), ("sweat", "fever"), ("chill", "chills"), ("shak", "chills"), ("shiver", "chills"), ("trembl", "chills"),
        ("swell", "face-swelling"), ("swell", "new-swelling"), ("swoll", "face-swelling"), ("swoll", "new-swelling"), ("puff", "new-swelling"),
        ("redness", "redness"), ("streak", "redness"), ("longer", "line-longer"), ("leak", "leaking"), ("drip", "leaking"), ("burn", "infusing-pain"),
        ("pull", "line-moved"), ("pain", "infusing-pain"), ("hurt", "infusing-pain"), ("thirst", "high-sugar-signs"), ("unwell", "seems-unwell"),
        ("poorly", "seems-unwell"), ("limp", "seems-unwell"), ("drows", "confusion"), ("sleepy", "confusion"),
    ];

    /// <summary>Whole words, in lower case, too short to match by their beginning.</summary>
    private static readonly (string Word, string Question)[] Wholes =
    [
        ("hot", "fever"), ("38", "fever"), ("39", "fever"), ("40", "fever"), ("100", "fever"), ("101", "fever"), ("102", "fever"), ("103", "fever"),
        ("pus", "pus"), ("red", "redness"), ("blue", "blue"), ("grey", "blue"), ("gray", "blue"), ("air", "air"), ("cut", "line-broken"),
        ("fit", "seizure"), ("weak", "one-sided"), ("sick", "seems-unwell"), ("ill", "seems-unwell"), ("cold", "chills"), ("out", "line-moved"),
    ];

    /// <summary>The questions that a text brings, in the order of the screen; empty when no word was found.</summary>
    /// <param name="text">What somebody typed; may be empty.</param>
    public static ImmutableArray<ScreenQuestion> In(string? text)
    {
        if (string.IsNullOrWhiteSpace(text)) return [];
        var asks = new HashSet<string>(StringComparer.Ordinal);
        foreach (var word in Words(text.ToLowerInvariant()))
        {
            foreach (var (start, question) in Starts)
                if (word.StartsWith(start, StringComparison.Ordinal)) asks.Add(question);
            foreach (var (whole, question) in Wholes)
                if (word == whole) asks.Add(question);
        }

        return [.. ScreenQuestions.InOrder.Where(asked => asks.Contains(asked.Question.Id)).Select(asked => asked.For(ScreenContext.Unknown))];
    }

    private static IEnumerable<string> Words(string text)
    {
        var start = -1;
        for (var i = 0; i <= text.Length; i++)
        {
            var inside = i < text.Length && char.IsLetterOrDigit(text[i]);
            if (inside && start < 0) start = i;
            if (inside || start < 0) continue;
            yield return text[start..i];
            start = -1;
        }
    }
}
