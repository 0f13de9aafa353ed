using HomeLine.LineCare.Counting;

namespace HomeLine.LineCare.Tests.Counting;

/// <summary>Rates and their exact limits against published figures.</summary>
public sealed class RateIntervalTests
{
    /// <summary>Count 25: 90 % 17.38 to 34.92, 95 % 16.18 to 36.90, 99 % 14.00 to 41.00 (a statistics FAQ on the confidence interval of a count, looked up);
    /// 0: upper 3.689, 10: 4.80 to 18.39 (manual of the R package epitools, and a Poisson calculator page with worked values, looked up).</summary>
    [Theory]
    [InlineData(25, 90, 17.38, 34.92)]
    [InlineData(25, 95, 16.18, 36.90)]
    [InlineData(25, 99, 14.00, 41.00)]
    [InlineData(10, 95, 4.80, 18.39)]
    [InlineData(0, 95, 0, 3.69)]
    public void Exact_limits_of_a_count(int count, double confidence, double lower, double upper)
    {
        var interval = RateInterval.Of(count, RateInterval.PerDays, confidence);

        Assert.Equal(lower, interval.Lower, 2);
        Assert.Equal(upper, interval.Upper, 2);
    }

    /// <summary>136 events in 22,050 person-years: 6.2 (5.2 to 7.3) for a thousand (vignette of the R package epiR, looked up).</summary>
    [Fact]
    public void Exact_limits_of_a_rate()
    {
        var rate = RateInterval.Of(136, 22_050, 95);

        Assert.Equal((6.2, 5.2, 7.3), (Math.Round(rate.Rate, 1), Math.Round(rate.Lower, 1), Math.Round(rate.Upper, 1)));
    }

    /// <summary>Observed 4, expected 3.3: the ratio's mid-P limits are 0.38 to 2.9 (manual page <c>epi.smr</c> of the R package epiR, looked up).</summary>
    [Fact]
    public void Mid_p_limits_of_a_ratio()
    {
        var count = RateInterval.Of(4, RateInterval.PerDays, 95, IntervalMethod.MidP);

        Assert.Equal((0.39, 2.9), (Math.Round(count.Lower / 3.3, 2), Math.Round(count.Upper / 3.3, 1)));
    }

    /// <summary>2 infections in 500 line-days: 4.0 for a thousand (an open vascular-access policy set, looked up).</summary>
    [Fact]
    public void Two_infections_in_five_hundred_days_are_four_for_a_thousand() => Assert.Equal(4.0, RateInterval.Of(2, 500, 95).Rate, 10);

    /// <summary>None in 2,130 days: not "no risk" but up to 1.73 for a thousand. Our own computation, from the limit of a count of zero above.</summary>
    [Fact]
    public void Nothing_seen_still_has_an_upper_limit()
    {
        var rate = RateInterval.Of(0, 2_130, 95);

        Assert.Equal((0.0, 0.0, 1.73), (rate.Rate, rate.Lower, Math.Round(rate.Upper, 2)));
    }

    /// <summary>More events, higher limits; more confidence, a wider interval; mid-P inside exact. For every count that an agency sees.</summary>
    [Fact]
    public void Limits_keep_their_order()
    {
        for (var count = 0; count <= 150; count++)
        {
            var (exact, midP) = (RateInterval.Of(count, 1000, 95), RateInterval.Of(count, 1000, 95, IntervalMethod.MidP));
            RateInterval next = RateInterval.Of(count + 1, 1000, 95), wider = RateInterval.Of(count, 1000, 99);

            Assert.True(exact.Lower <= midP.Lower && midP.Upper < exact.Upper, $"{count}");
            Assert.True(exact.Lower < next.Lower && exact.Upper < next.Upper, $"{count}");
            Assert.True(wider.Lower <= exact.Lower && wider.Upper > exact.Upper, $"{count}");
        }
    }

    [Fact]
    public void No_days_no_rate() => Assert.Throws<ArgumentOutOfRangeException>(() => RateInterval.Of(1, 0, 95));
}
