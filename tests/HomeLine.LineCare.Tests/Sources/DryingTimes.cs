using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>Drying times as printed, looked up: RNAO best practice guideline, drying times by solution; US labels (DailyMed) of 2 % chlorhexidine in
/// 70 % alcohol, three swabsticks (Directions) and single sponge applicator (Warnings); Nova Scotia Health practice page, Principles.</summary>
public sealed class DryingTimes
{
    [Theory]
    [InlineData("skin.scrub.chlorhexidine", 30, "seconds")] // three-swabstick label, Directions
    [InlineData("skin.dry.chlorhexidine.swab", 30, "seconds")] // the same label; RNAO: 2 % with alcohol
    [InlineData("skin.dry.chlorhexidine.aqueous", 120, "seconds")] // RNAO: without alcohol, 2 minutes
    [InlineData("skin.dry.chlorhexidine.sponge", 180, "seconds")] // sponge label, Warnings: 3 minutes on hairless skin
    [InlineData("skin.dry.chlorhexidine.hair", 60, "minutes")] // sponge label, Warnings: up to 1 hour in hair
    public void The_policy_keeps_the_figure_and_the_unit_of_the_page(string rule, int value, string unit)
    {
        var inForce = PolicyBook.Default.InForce(rule, Mar(8))!;

        Assert.Equal((value, unit, RuleStanding.Published), ((int)inForce.Value, inForce.Unit, inForce.Standing));
    }

    /// <summary>CDC checklist for prevention of central line infections (2015), insertion practices, looked up: more than 0.5 % with alcohol.</summary>
    [Fact]
    public void The_strength_asked_for_is_not_below_that_of_the_checklist() =>
        Assert.True(PolicyBook.Default.ValueOf("chlorhexidine.strength.min", Mar(8)) > 0.5m);
}
