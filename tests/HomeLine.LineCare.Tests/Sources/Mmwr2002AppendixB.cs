using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>CDC, MMWR 2002;51(RR-10), Appendix B (looked up). Superseded in 2011: kept as the source of the hang times, which later texts repeat.</summary>
public sealed class Mmwr2002AppendixB
{
    [Theory]
    [InlineData("set.pn.max", 24)]
    [InlineData("set.lipid.max", 12)]
    [InlineData("set.blood.max", 4)]
    public void Lipid_nutrition_lipid_alone_and_blood_have_their_hang_times(string rule, int hours)
    {
        var shipped = PolicyBook.Default.InForce(rule, Mar(8))!;

        Assert.Equal((hours, "hours"), ((int)shipped.Value, shipped.Unit));
        Assert.Contains("MMWR 2002", shipped.Source, StringComparison.Ordinal);
    }
}
