using CsCheck;
using HomeLine.Paper.Layout;
using HomeLine.Paper.Layout.Typesetting;

namespace HomeLine.Paper.Tests;

public class LineBreakerTests
{
    private static readonly LineBreaker Breaker = new(new FixedPitch());

    [Fact]
    public void Lines_end_at_spaces() =>
        Assert.Equal(["one two ", "three ", "four"], Lines("one two three four", letters: 8));

    [Fact]
    public void A_word_wider_than_the_line_is_cut_without_losing_a_letter() =>
        Assert.Equal(["abcd", "efgh", "ij k"], Lines("abcdefghij k", letters: 4));

    [Fact]
    public void An_empty_text_is_one_empty_line() => Assert.Equal([""], Lines("", letters: 4));

    [Fact]
    public void A_time_stays_with_its_half_of_the_day_and_a_day_with_its_month() =>
        Assert.Equal(["from ", "11:00 am, ", "March 9"], Lines("from 11:00 am, March 9", letters: 10));

    [Fact]
    public void A_letter_of_several_code_units_is_never_torn() =>
        Assert.All(Lines(string.Concat(Enumerable.Repeat("\U0001F340", 9)), letters: 3), line => Assert.False(char.IsLowSurrogate(line[0])));

    [Fact]
    public void Whatever_the_text_no_line_is_too_wide_and_no_word_is_lost() =>
        Gen.Select(Gen.String[Gen.Char["abc de fgh"], 0, 200], Gen.Int[2, 30]).Sample((text, letters) =>
        {
            var lines = Lines(text, letters);
            Assert.All(lines, line => Assert.True(line.TrimEnd().Length <= letters));
            Assert.Equal(Squeezed(text), Squeezed(string.Concat(lines)));
        });

    private static string Squeezed(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    private static List<string> Lines(string text, int letters) =>
        [.. Breaker.Break(text, 10, letters * 5).Select(line => string.Concat(line.Segments.Select(segment => segment.Text)))];
}
