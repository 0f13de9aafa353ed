using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Clocks;

public sealed class BrokenSeal
{
    private static Given OnNutrition => Picc(2).But(care => care with { Risks = RiskFactors.ParenteralNutrition }).Dressing(Mar(3));

    [Fact]
    public void A_lifting_edge_with_a_bead_of_moisture_on_a_nutrition_patient_is_raised_to_the_most_urgent_class()
    {
        var window = OnNutrition.Seal(SealFinding.EdgeLifted | SealFinding.Moisture, Mar(9), 7, 52).Window(CareItem.Dressing, Mar(9), 8);

        Assert.Equal(WindowStanding.CutShort, window.Standing);
        Assert.Equal(1, window.SealClass);
        Assert.Equal(At(Mar(9), 11, 52), window.Target);
        Assert.Equal(At(Mar(9), 15, 52), window.LateFrom);
        Assert.Contains("raised from B2 for parenteral nutrition", window.Because.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Reinforcing_the_edge_leaves_the_seal_broken()
    {
        var window = OnNutrition.Seal(SealFinding.EdgeLifted, Mar(9), 7, 52)
            .Event(LineEventKind.DressingReinforced, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10);

        Assert.Equal(WindowStanding.CutShort, window.Standing);
        Assert.Equal(At(Mar(9), 15, 52), window.LateFrom);
    }

    [Fact]
    public void A_full_change_after_the_report_closes_it_and_starts_the_clock_again()
    {
        var window = OnNutrition.Seal(SealFinding.EdgeLifted, Mar(9), 7, 52).Dressing(Mar(9), 10, 20).Window(CareItem.Dressing, Mar(9), 11);

        Assert.Equal((WindowStanding.Running, 0), (window.Standing, window.SealClass));
        Assert.Equal((Mar(14), Mar(16)), (window.OpensOn, window.LastDay));
    }
}
