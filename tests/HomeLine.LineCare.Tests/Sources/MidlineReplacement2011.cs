using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>CDC/HICPAC guidelines 2011, replacement of peripheral and midline catheters (syndicated copy, looked up): replace a midline only
/// when there is a specific indication.</summary>
public sealed class MidlineReplacement2011
{
    [Fact]
    public void No_clock_ever_says_that_a_midline_is_to_be_replaced()
    {
        var old = new Given().Line(LineKind.Midline, 1, but: l => l with { InsertedOn = new LocalDate(2026, 11, 1) }).Dressing(Mar(5));

        Assert.DoesNotContain(old.AnswerAt(Mar(8)).Windows, w => w.Item is CareItem.OrderedService or CareItem.RemovalSiteCheck);
    }
}
