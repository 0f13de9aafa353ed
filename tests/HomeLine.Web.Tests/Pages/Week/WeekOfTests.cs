using HomeLine.Web.Pages.Week;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Week;

public sealed class WeekOfTests
{
    [Theory]
    [InlineData("2027-03-08")]
    [InlineData("2027-03-11")]
    [InlineData("2027-03-14")]
    public void Any_day_of_a_week_means_its_Monday(string iso) => Assert.Equal(Arrangement.Monday, WeekOf.Day(iso, new LocalDate(2030, 1, 1)));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("08/03/2027")]
    [InlineData("<script>")]
    public void An_address_without_a_readable_day_means_this_week(string? iso) =>
        Assert.Equal(Arrangement.Monday, WeekOf.Day(iso, new LocalDate(2027, 3, 10)));
}
