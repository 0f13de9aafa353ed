namespace HomeLine.Paper.Tests;

public class ReadingGradeTests
{
    [Theory]
    [InlineData("line", 1)]
    [InlineData("dressing", 2)]
    [InlineData("nurse", 1)]
    [InlineData("table", 2)]
    [InlineData("itches", 2)]
    [InlineData("looked", 1)]
    [InlineData("emergency", 4)]
    [InlineData("911", 1)]
    public void Syllables_are_counted_by_hand_and_by_rule_alike(string word, int syllables) =>
        Assert.Equal(syllables, ReadingGrade.SyllablesOf(word));

    [Fact]
    public void Both_formulas_agree_with_the_sum_done_by_hand()
    {
        // "The line leaks. Call the nurse now.": 2 sentences, 7 words, 7 syllables, 27 letters.
        // Kincaid: 0.39 x 3.5 + 11.8 x 1 - 15.59 = -2.425. Smith and Senter: 4.71 x 27 / 7 + 0.5 x 3.5 - 21.43 = -1.513.
        var grade = ReadingGrade.Of("The line leaks. Call the nurse now.");
        Assert.Equal(new ReadingGrade(2, 7, 7, 27), grade);
        Assert.Equal(-2.425, grade.FleschKincaid, 0.001);
        Assert.Equal(-1.513, grade.AutomatedReadability, 0.001);
    }

    [Fact]
    public void A_text_for_clinicians_is_graded_as_hard()
    {
        var grade = ReadingGrade.Of(
            "Immediate notification of the prescribing practitioner is indicated whenever catheter-related bloodstream infection is suspected.");
        Assert.True(grade.FleschKincaid > 12);
        Assert.True(grade.AutomatedReadability > 12);
    }
}
