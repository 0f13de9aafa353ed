using System.Text.RegularExpressions;

namespace HomeLine.Paper.Tests;

/// <summary>How many years of school a text asks for, by two formulas. Every line counts as at least one sentence.</summary>
internal sealed partial record ReadingGrade(int Sentences, int Words, int Syllables, int Letters)
{
    /// <summary>
    /// 0.39 words per sentence + 11.8 syllables per word - 15.59: Kincaid, Fishburne, Rogers and Chissom (1975), Derivation of New Readability
    /// Formulas for Navy Enlisted Personnel, Research Branch Report 8-75.
    /// </summary>
    public double FleschKincaid => (0.39 * Words / Sentences) + (11.8 * Syllables / Words) - 15.59;

    /// <summary>
    /// 4.71 letters per word + 0.5 words per sentence - 21.43: Smith and Senter (1967), Automated Readability Index, AMRL-TR-66-220.
    /// </summary>
    public double AutomatedReadability => (4.71 * Letters / Words) + (0.5 * Words / Sentences) - 21.43;

    public static ReadingGrade Of(string text)
    {
        var sentences = SplitSentences(text);
        var words = sentences.SelectMany(WordsOf).ToList();
        return new ReadingGrade(sentences.Count, words.Count, words.Sum(SyllablesOf), words.Sum(word => word.Count(char.IsLetterOrDigit)));
    }

    public static IReadOnlyList<string> SplitSentences(string text) =>
        [.. SentenceEnd().Split(text).Where(sentence => WordsOf(sentence).Any())];

    public static IEnumerable<string> WordsOf(string sentence) => Word().Matches(sentence).Select(match => match.Value);

    /// <summary>Vowel groups, less a silent e at the end, at least one; a number counts as one (the usual approximation).</summary>
    public static int SyllablesOf(string word)
    {
        var letters = word.ToLowerInvariant();
        var groups = VowelGroup().Count(letters);
        var silent = SilentEnd().IsMatch(letters) ? 1 : 0;
        return Math.Max(1, groups - silent);
    }

    [GeneratedRegex(@"[.!?:](?=\s|$)|\n|\|")]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@"[\p{L}\p{Nd}][\p{L}\p{Nd}'’.\-]*[\p{L}\p{Nd}]|[\p{L}\p{Nd}]")]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouy]+")]
    private static partial Regex VowelGroup();

    [GeneratedRegex("([^aeiouyl]|[aeiouy]l)e$|[^aeiouytd]ed$|[^aeiouscxzgh]es$")]
    private static partial Regex SilentEnd();
}
