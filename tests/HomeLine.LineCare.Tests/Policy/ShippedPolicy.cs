using System.Reflection;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Tests.Policy;

public sealed class ShippedPolicy
{
    private static readonly LocalDate Someday = new(2027, 3, 8);

    [Fact]
    public void Every_entry_has_a_unit_and_a_source()
    {
        Assert.All(PolicyBook.Default.Rules, rule =>
        {
            Assert.False(string.IsNullOrWhiteSpace(rule.Unit), rule.Id);
            Assert.False(string.IsNullOrWhiteSpace(rule.Source), rule.Id);
            Assert.Equal(PolicyLevel.Default, rule.Level);
        });
    }

    [Fact]
    public void No_entry_is_there_twice_and_no_floor_is_above_its_ceiling()
    {
        Assert.Empty(PolicyCheck.Problems(PolicyBook.Default));
        Assert.Equal(PolicyBook.Default.Rules.Length, PolicyBook.Default.Rules.Select(rule => rule.Id).Distinct().Count());
    }

    [Fact]
    public void What_is_our_own_says_so_and_what_is_published_names_the_publication()
    {
        Assert.All(PolicyBook.Default.Rules, rule =>
        {
            var own = rule.Source.StartsWith("our own default", StringComparison.Ordinal);
            Assert.True(own == (rule.Standing == RuleStanding.OwnDefault), rule.Id);
            if (rule.Standing == RuleStanding.CommonPractice)
                Assert.StartsWith("common practice, no source", rule.Source, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Every_id_the_clocks_read_is_in_the_shipped_policy()
    {
        var ids = typeof(PolicyBook).Assembly.GetType("HomeLine.LineCare.Policy.RuleIds", true)!
            .GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => (string)field.GetRawConstantValue()!)
            .ToList();
        Assert.NotEmpty(ids);
        Assert.All(ids, id => Assert.True(
            PolicyBook.Default.InForce(id, Someday) is not null
            || (PolicyBook.Default.InForce(id + ".max", Someday) is not null && PolicyBook.Default.InForce(id + ".min", Someday) is not null),
            id));
    }

    [Theory]
    [InlineData("risk.dressing", 5)]
    [InlineData("risk.needle", 5)]
    [InlineData("risk.connector", 3)]
    [InlineData("risk.set", 4)]
    [InlineData("risk.labs", 2)]
    [InlineData("risk.level", 5)]
    [InlineData("risk.flush", 1)]
    [InlineData("risk.factor.cap", 4)]
    [InlineData("visit.documentation", 15)]
    [InlineData("told.range", 60)]
    [InlineData("specimen.drawtodrop.max", 120)]
    [InlineData("validation.caregiver.life", 90)]
    [InlineData("frequency.weekstart", 7)]
    [InlineData("minutes.dressing.setup", 30)]
    [InlineData("minutes.dressing.work", 20)]
    [InlineData("minutes.needle.work", 35)]
    [InlineData("minutes.portflush.setup", 25)]
    [InlineData("minutes.setup.pn.extra", 15)]
    public void The_office_values_are_policy_too(string id, int value) => Assert.Equal(value, PolicyBook.Default.ValueOf(id, Someday));

    [Fact]
    public void Asking_for_a_rule_that_does_not_exist_is_the_callers_mistake() =>
        Assert.Throws<KeyNotFoundException>(() => PolicyBook.Default.ValueOf("dressing.cloth.max", Someday));
}
