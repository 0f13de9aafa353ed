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

    [Theory]
    [InlineData("2027-03-11", "2027-03-08", "2027-03-11")]
    [InlineData(null, "2027-03-12", "2027-03-12")]
    [InlineData(null, "2027-03-08", "2027-03-10")]
    [InlineData("2027-03-08", "2027-03-08", "2027-03-08")]
    [InlineData("2027-04-01", "2027-03-08", "2027-03-08")]
    [InlineData("no day", null, "2027-03-10")]
    public void The_day_shown_is_the_one_asked_for_else_today_else_the_Monday(string? asked, string? path, string shown) =>
        Assert.Equal(shown, WeekOf.Shown(asked, path, Arrangement.Monday, new LocalDate(2027, 3, 10)).ToString("uuuu-MM-dd", null));

    [Fact]
    public void A_week_without_today_shows_its_Monday() =>
        Assert.Equal(Arrangement.Monday, WeekOf.Shown(null, "2027-03-08", Arrangement.Monday, new LocalDate(2030, 1, 1)));
}
