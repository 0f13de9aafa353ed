using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>The words of an enumeration as the files spell them: <c>GauzeUnderFilm</c> is <c>gauze_under_film</c>.</summary>
internal static class Words<T> where T : struct, Enum
{
    private static readonly ImmutableDictionary<T, string> Spelled =
        Enum.GetValues<T>().Distinct().ToImmutableDictionary(value => value, value => Spell(value.ToString()));

    private static readonly ImmutableDictionary<string, T> Known =
        Spelled.ToImmutableDictionary(pair => pair.Value, pair => pair.Key, StringComparer.OrdinalIgnoreCase);

    /// <summary>All words, for messages.</summary>
    public static string All { get; } = string.Join(", ", Enum.GetValues<T>().Distinct().Select(value => Spelled[value]));

    public static string Of(T value) => Spelled[value];

    public static bool TryParse(string word, out T value) => Known.TryGetValue(word, out value);

    private static string Spell(string name)
    {
        var word = new StringBuilder(name.Length + 4);
        foreach (char c in name)
        {
            if (char.IsUpper(c) && word.Length > 0) word.Append('_');
            word.Append(char.ToLowerInvariant(c));
        }

        return word.ToString();
    }
}

/// <summary>Weekdays as three letters.</summary>
internal static class WeekdayWords
{
    public const string All = "mon, tue, wed, thu, fri, sat, sun";
    private static readonly ImmutableArray<string> Short = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

    public static string Of(IsoDayOfWeek day) => Short[(int)day - 1];

    public static bool TryParse(string word, out IsoDayOfWeek day)
    {
        int index = Short.IndexOf(word, 0, Short.Length, StringComparer.OrdinalIgnoreCase);
        day = (IsoDayOfWeek)(index + 1);
        return index >= 0;
    }
}
