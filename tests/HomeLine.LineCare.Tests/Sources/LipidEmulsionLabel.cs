using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>US label of soybean-oil lipid injectable emulsion 20 %, section 2.1, looked up: 1.2 micron in-line filter.</summary>
public sealed class LipidEmulsionLabel
{
    [Fact]
    public void Lipid_runs_through_a_filter_of_1_2_micron() => Assert.Equal(1.2m, PolicyBook.Default.ValueOf("filter.poresize", Mar(8)));
}
