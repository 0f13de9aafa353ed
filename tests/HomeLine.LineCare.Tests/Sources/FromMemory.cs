using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>What is remembered and not read is marked so, wherever a person sees it; none of it is asserted as an outside fact.</summary>
public sealed class FromMemory
{
    [Theory]
    [InlineData("resumption.max")] // 42 CFR 484.55(d)(2)
    [InlineData("resumption.stay.min")] // 42 CFR 484.55(d)(2)
    [InlineData("dressing.gauze.wings.countsasfilm")] // INS standards of practice 2021, Standard 42
    [InlineData("dressing.none.healed.after")]
    public void The_policy_says_that_it_is_remembered(string rule) =>
        Assert.Equal(RuleStanding.FromMemory, PolicyBook.Default.InForce(rule, Mar(8))!.Standing);
}
