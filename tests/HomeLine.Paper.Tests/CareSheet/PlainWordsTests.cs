using HomeLine.Agency.Sheets;
using HomeLine.Paper.Layout;

namespace HomeLine.Paper.Tests;

/// <summary>Grade 6 or lower by two formulas, sentences under 15 words, and words that must never stand on a caregiver's sheet.</summary>
public class PlainWordsTests
{
    private static readonly string[] StandingLines =
    [
        .. StandingTexts.NeverWait, .. StandingTexts.CallNow(38.0m), .. StandingTexts.CallToday, .. StandingTexts.LooksGood,
        StandingTexts.CleanHands, StandingTexts.IfUnsure, StandingTexts.OnlyYourTasks, StandingTexts.Caution, StandingTexts.PracticeSheet,
    ];

    [Fact]
    public void The_whole_sheet_reads_at_grade_6_or_lower_by_both_formulas()
    {
        var grade = ReadingGrade.Of(PlainText.Of(CareSheet.ToDocument(SampleCareSheet.WithWarnings, PaperSize.Letter, Edition.Normal)));
        Assert.True(grade.FleschKincaid <= 6, $"Flesch-Kincaid {grade.FleschKincaid:0.0}");
        Assert.True(grade.AutomatedReadability <= 6, $"Automated readability {grade.AutomatedReadability:0.0}");
    }

    [Fact]
    public void The_standing_texts_alone_read_at_grade_6_or_lower_by_both_formulas()
    {
        var grade = ReadingGrade.Of(string.Join('\n', StandingLines));
        Assert.True(grade.FleschKincaid <= 6, $"Flesch-Kincaid {grade.FleschKincaid:0.0}");
        Assert.True(grade.AutomatedReadability <= 6, $"Automated readability {grade.AutomatedReadability:0.0}");
    }

    [Fact]
    public void Every_sentence_has_fewer_than_15_words()
    {
        var text = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.WithWarnings, PaperSize.Letter, Edition.Normal));
        Assert.All(ReadingGrade.SplitSentences(text), sentence => Assert.InRange(ReadingGrade.WordsOf(sentence).Count(), 1, 14));
    }

    [Theory]
    [InlineData("\\bsafe")]
    [InlineData("\\bOK\\b|okay")]
    [InlineData("\\bwait until\\b")]
    [InlineData("no infection|not infected")]
    [InlineData("\\b(mg|mL|ml|units?|grams?|drops?)\\b")]
    [InlineData("\\b(should|fault|failed|forgot)\\b")]
    [InlineData("every \\d+ days|\\bweekly\\b")]
    public void Words_that_promise_blame_or_dose_never_appear(string pattern)
    {
        var text = PlainText.Of(CareSheet.ToDocument(SampleCareSheet.WithWarnings, PaperSize.Letter, Edition.Normal));
        Assert.DoesNotMatch($"(?i){pattern}", text);
        Assert.All(StandingLines, line => Assert.DoesNotMatch($"(?i){pattern}", line));
    }

    [Fact]
    public void No_sign_stands_on_two_lists()
    {
        var all = StandingTexts.NeverWait.Concat(StandingTexts.CallNow(38.0m)).Concat(StandingTexts.CallToday).ToList();
        Assert.Equal(all.Count, all.Distinct().Count());
        Assert.DoesNotContain(StandingTexts.CallNow(38.0m), line => line.Contains("face", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void The_fever_line_names_the_same_temperature_in_both_scales()
    {
        // (100.4 - 32) x 5 / 9 = 38.0
        Assert.Contains(StandingTexts.CallNow(38.0m), line => line.Contains("100.4 °F (38.0 °C)", StringComparison.Ordinal));
        Assert.Equal(38.0, (100.4 - 32) * 5 / 9, 0.001);
    }
}
