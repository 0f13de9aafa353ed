using System.Globalization;
using HomeLine.Web.Parts;
using NodaTime;

namespace HomeLine.Web.Tests.Parts;

public sealed class PlainDatesTests
{
    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("en-US")]
    public void Dates_read_the_same_whatever_the_machine_speaks(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            Assert.Equal("Wed 10 Mar", new LocalDate(2027, 3, 10).InWords());
            Assert.Equal("Wednesday 10 March 2027", new LocalDate(2027, 3, 10).InFull());
            Assert.Equal("08:05", new LocalTime(8, 5).InWords());
            Assert.Equal("2027-03-10", new LocalDate(2027, 3, 10).Iso());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(45, "45 min")]
    [InlineData(60, "1 h")]
    [InlineData(75, "1 h 15 min")]
    public void Minutes_read_as_hours_from_one_hour_on(int minutes, string words) => Assert.Equal(words, PlainDates.Minutes(minutes));

    [Fact]
    public void An_instant_is_shown_in_the_zone_of_the_place() =>
        Assert.Equal("Tue 9 Mar 2027, 07:52", Instant.FromUtc(2027, 3, 9, 12, 52).InWords(Arrangement.Zone));
}
