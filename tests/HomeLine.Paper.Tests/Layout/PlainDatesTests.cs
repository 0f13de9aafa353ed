using HomeLine.Paper.Layout;
using NodaTime;

namespace HomeLine.Paper.Tests;

public class PlainDatesTests
{
    [Fact]
    public void A_day_has_its_weekday() => Assert.Equal("Tuesday, March 9, 2027", PlainDates.Day(new LocalDate(2027, 3, 9)));

    [Theory]
    [InlineData(0, 5, "12:05 am")]
    [InlineData(12, 0, "12:00 pm")]
    [InlineData(15, 52, "3:52 pm")]
    public void A_time_says_am_or_pm(int hour, int minute, string expected) =>
        Assert.Equal(expected, PlainDates.Time(new LocalTime(hour, minute)));

    [Theory]
    [InlineData(10, 11, "10:00 to 11:00 am")]
    [InlineData(11, 12, "11:00 am to 12:00 pm")]
    [InlineData(13, 14, "1:00 to 2:00 pm")]
    public void A_range_names_the_half_of_the_day_once_when_once_is_enough(int from, int to, string expected) =>
        Assert.Equal(expected, PlainDates.Range(new LocalTime(from, 0), new LocalTime(to, 0)));
}
