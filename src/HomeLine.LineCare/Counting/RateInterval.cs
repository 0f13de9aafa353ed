namespace HomeLine.LineCare.Counting;

/// <summary>How the interval around a count is worked out. Two methods give two intervals: whoever shows one names it.</summary>
public enum IntervalMethod
{
    /// <summary>Garwood's exact limits: never narrower than the confidence asked for.</summary>
    Exact,

    /// <summary>Exact limits that count half of what was seen: a little narrower.</summary>
    MidP,
}

/// <summary>Events seen over days, as a rate for a thousand days with its two-sided interval.</summary>
/// <param name="Events">Events counted, 0 or more.</param>
/// <param name="Days">Days they were counted over, 1 or more.</param>
/// <param name="Lower">Lower limit, events for a thousand days; 0 when nothing was seen.</param>
/// <param name="Upper">Upper limit, events for a thousand days.</param>
public sealed record RateInterval(int Events, int Days, double Lower, double Upper)
{
    /// <summary>A rate is told for so many days: the unit of the published rates.</summary>
    public const int PerDays = 1000;

    /// <summary>Events for a thousand days.</summary>
    public double Rate => (double)Events * PerDays / Days;

    /// <summary>
    /// The rate of a Poisson count with exact limits: the mean at which so few, and the mean at which so many, would be seen with half the error each.
    /// Definitions as in the manual pages of the R packages exactci (<c>poisson.exact</c>) and epitools.
    /// </summary>
    /// <param name="events">Events counted, 0 or more.</param>
    /// <param name="days">Days counted, 1 or more.</param>
    /// <param name="confidencePercent">Two-sided confidence in percent, over 0 and under 100.</param>
    /// <param name="method">Which limits.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count or a confidence outside its range.</exception>
    public static RateInterval Of(int events, int days, double confidencePercent, IntervalMethod method = IntervalMethod.Exact)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(events);
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(confidencePercent);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(confidencePercent, 100);
        double tail = (1 - (confidencePercent / 100)) / 2;
        double half = method == IntervalMethod.MidP ? 0.5 : 1;
        double lower = events == 0 ? 0 : MeanWhere(mean => 1 - UpTo(events - 1, mean) - ((1 - half) * Exactly(events, mean)), tail, events, rises: true);
        double upper = MeanWhere(mean => UpTo(events - 1, mean) + (half * Exactly(events, mean)), tail, events, rises: false);
        return new RateInterval(events, days, lower * PerDays / days, upper * PerDays / days);
    }

    /// <summary>The mean at which a tail has the size asked for; halving is enough, the tails are monotone.</summary>
    private static double MeanWhere(Func<double, double> tailAt, double tail, int events, bool rises)
    {
        (double low, double high) = (0, events + (20 * Math.Sqrt(events + 1)) + 20);
        for (int step = 0; step < 200 && high - low > 1e-12 * Math.Max(1, high); step++)
        {
            double middle = (low + high) / 2;
            if (tailAt(middle) > tail == rises) high = middle;
            else low = middle;
        }

        return (low + high) / 2;
    }

    private static double UpTo(int events, double mean)
    {
        double sum = 0;
        for (int k = 0; k <= events; k++) sum += Exactly(k, mean);
        return Math.Min(1, sum);
    }

    private static double Exactly(int events, double mean)
    {
        if (mean <= 0) return events == 0 ? 1 : 0;
        double log = -mean + (events * Math.Log(mean));
        for (int k = 2; k <= events; k++) log -= Math.Log(k);
        return Math.Exp(log);
    }
}
