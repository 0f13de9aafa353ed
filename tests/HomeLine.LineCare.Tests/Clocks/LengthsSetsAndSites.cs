using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

public sealed class LengthsSetsAndSites
{
    [Fact]
    public void Nutrition_without_a_word_about_lipid_counts_as_with_lipid()
    {
        var given = Picc().Infusion(InfusionKind.ParenteralNutrition, PerformerKind.Nurse).Event(LineEventKind.SetChanged, Mar(8), 8);

        Assert.Equal(Duration.FromHours(24), given.Window(CareItem.Set, Mar(8), 9).LateFrom - At(Mar(8), 8));
    }

    [Fact]
    public void No_rule_of_the_policy_is_a_volume_a_strength_of_a_lock_or_a_dose() =>
        Assert.DoesNotContain(PolicyBook.Default.Rules, rule => rule.Unit is "mL" or "units/mL" or "mg" or "units" || rule.Id.Contains("heparin", StringComparison.Ordinal));
}
