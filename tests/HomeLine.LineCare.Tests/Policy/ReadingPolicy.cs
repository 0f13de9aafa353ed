using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Tests.Policy;

public sealed class ReadingPolicy
{
    private const string Good =
        """{"id":"dressing.film.max","value":7,"unit":"days","from":"2027-01-01","level":"agency","standing":"ownDefault","source":"Agency policy"}""";

    private static PolicyReading Read(string text) => PolicyBook.Read(new StringReader(text));

    [Fact]
    public void A_well_formed_entry_is_read()
    {
        var rule = Assert.Single(Read($"[{Good}]").Book!.Rules);

        Assert.Equal(
            new PolicyRule("dressing.film.max", 7, "days", new LocalDate(2027, 1, 1), PolicyLevel.Agency, RuleStanding.OwnDefault, "Agency policy"), rule);
    }

    [Theory]
    [InlineData("\"source\":\"Agency policy\"", "\"source\":\"\"", "has no source")]
    [InlineData("\"unit\":\"days\"", "\"unit\":\" \"", "has no unit")]
    [InlineData("\"value\":7", "\"value\":\"seven\"", "has no number")]
    [InlineData("2027-01-01", "01/02/2027", "has no first day")]
    [InlineData("\"level\":\"agency\"", "\"level\":\"me\"", "who set it")]
    [InlineData("\"standing\":\"ownDefault\"", "\"standing\":\"\"", "how its value is known")]
    [InlineData("\"value\":7", "\"value\":-1", "below zero")]
    [InlineData("\"value\":7", "\"value\":400", "over a year")]
    [InlineData("\"level\":\"agency\"", "\"level\":\"order\"", "belong to the patient")]
    public void A_bad_entry_is_refused_with_a_sentence_that_names_it(string good, string bad, string problem)
    {
        var reading = Read($"[{Good.Replace(good, bad, StringComparison.Ordinal)}]");

        Assert.Null(reading.Book);
        Assert.Contains(reading.Problems, sentence => sentence.Contains(problem, StringComparison.Ordinal)
            && sentence.Contains("dressing.film.max", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_rule_twice_from_one_day_is_refused() =>
        Assert.Contains("set twice", Assert.Single(Read($"[{Good},{Good}]").Problems), StringComparison.Ordinal);

    [Fact]
    public void A_floor_above_its_ceiling_is_refused()
    {
        var floor = Good.Replace("film.max", "film.min", StringComparison.Ordinal).Replace("\"value\":7", "\"value\":8", StringComparison.Ordinal);

        Assert.Contains("is above dressing.film.max", Assert.Single(Read($"[{Good},{floor}]").Problems), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{}")]
    [InlineData("[7]")]
    public void What_is_not_a_list_of_entries_is_refused_without_a_crash(string text)
    {
        var reading = Read(text);

        Assert.Null(reading.Book);
        Assert.NotEmpty(reading.Problems);
    }
}
