using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>CDC, Updated Recommendations on Chlorhexidine-Impregnated Dressings 2017, summary of recommendations, carried-over line (looked up):
/// replace a catheter dressing when it becomes damp, loosened or visibly soiled.</summary>
public sealed class ChlorhexidineDressings2017
{
    [Theory]
    [InlineData(SealFinding.Moisture)]
    [InlineData(SealFinding.EdgeLifted)]
    [InlineData(SealFinding.Soiled)]
    [InlineData(SealFinding.WetThrough)]
    public void Damp_loosened_or_soiled_opens_the_window_at_the_report_whatever_the_clock_says(SealFinding finding)
    {
        var window = Picc().Dressing(Mar(8)).Seal(finding, Mar(9), 9).Window(CareItem.Dressing, Mar(9), 10);

        Assert.Equal(At(Mar(9), 9), window.Opens);
        Assert.Equal(Mar(9), window.LastDay);
    }
}
