using HomeLine.Web.Parts.Timeline;
using NodaTime;

namespace HomeLine.Web.Tests.Parts.Timeline;

public sealed class TimeScaleTests
{
    private static readonly LocalDate Today = new(2027, 3, 10);
    private readonly TimeScale scale = TimeScale.Around(Today, Today.PlusDays(56));

    [Fact]
    public void The_scale_is_whole_weeks_from_the_Monday_four_weeks_back_through_the_last_day_looked_at()
    {
        Assert.Equal(new LocalDate(2027, 2, 8), scale.From);
        Assert.Equal(13, scale.Weeks);
        Assert.Equal(new LocalDate(2027, 5, 9), scale.Last);
        Assert.All(scale.Mondays, day => Assert.Equal(IsoDayOfWeek.Monday, day.DayOfWeek));
    }

    [Fact]
    public void A_day_beyond_either_end_is_drawn_at_that_end()
    {
        Assert.Equal(0, scale.Left(new LocalDate(2026, 1, 1)));
        Assert.Equal(scale.Width, scale.Left(new LocalDate(2028, 1, 1)));
        Assert.False(scale.Holds(new LocalDate(2027, 2, 7)));
        Assert.True(scale.Holds(scale.Last));
    }

    [Fact]
    public void The_next_day_stands_one_day_to_the_right() =>
        Assert.Equal(TimeScale.DayWidth, scale.Left(Today.PlusDays(1)) - scale.Left(Today));
}
