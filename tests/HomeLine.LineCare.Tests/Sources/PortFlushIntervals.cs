using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>
/// Idle ports: every 4 weeks (Royal Marsden Manual online edition, one published policy says so); 8 weeks no worse than 4 (systematic review 2020,
/// looked up); cohorts to 3 months (2021, looked up). Each must be possible as policy, none beyond 12 weeks.
/// </summary>
public sealed class PortFlushIntervals
{
    [Theory]
    [InlineData(28)]
    [InlineData(56)]
    [InlineData(84)]
    public void The_interval_can_be_set_to_what_was_studied(int days) =>
        Assert.Equal(Mar(1).PlusDays(days), Port().Event(LineEventKind.Flushed, Mar(1)).AgencyRule("port.flush.max", days, "days", new LocalDate(2026, 1, 1))
            .Window(CareItem.PortFlush, Mar(8)).LastDay);

    [Fact]
    public void The_longest_an_agency_may_set_is_12_weeks() =>
        Assert.Contains(PolicyCheck.Problems(Port().AgencyRule("port.flush.max", 85, "days", new LocalDate(2026, 1, 1)).Policy),
            problem => problem.Contains("port.flush.limit.upper", StringComparison.Ordinal));
}
