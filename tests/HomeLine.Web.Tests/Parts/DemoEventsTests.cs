using HomeLine.Web.Pages.Today;
using HomeLine.Web.Parts;
using NodaTime;

namespace HomeLine.Web.Tests.Parts;

/// <summary>The demonstration's own list of events, as it comes with the program.</summary>
public sealed class DemoEventsTests
{
    private static readonly DemoEvents Events = new();

    [Fact]
    public void The_red_letter_Tuesday_is_told_in_order()
    {
        string[] tuesday = [.. Events.All.Where(e => e.Moment.Date == new LocalDate(2027, 3, 9)).Select(e => e.At[11..])];

        Assert.Equal(["02:10", "06:45", "07:52", "08:05", "08:12", "08:20", "09:10", "10:15", "11:20", "13:45", "16:20", "21:40"], tuesday);
    }

    [Fact]
    public void Every_event_opens_a_page_there_is_and_says_what_is_right() => Assert.All(Events.All, e =>
    {
        Assert.NotEmpty(e.Said);
        Assert.NotEmpty(e.Right);
        string first = e.Way.Split('/', '?')[1];
        Assert.Contains(first, (string[])["today", "report", "patients", "policy", "week"]);
        if (e.Way.StartsWith("/today/", StringComparison.Ordinal)) Assert.Contains(TroubleWay.All, way => way.Href == e.Way);
    });

    [Fact]
    public void The_next_event_is_the_first_after_now_and_after_the_last_there_is_none()
    {
        Assert.Equal("P44: lifting, and chills", Events.After(new LocalDateTime(2027, 3, 9, 7, 52))?.Title);
        Assert.Null(Events.After(new LocalDateTime(2027, 3, 20, 0, 0)));
    }

    [Fact]
    public void No_name_of_a_person_stands_in_an_address() =>
        Assert.All(Events.All, e => Assert.DoesNotContain(e.Fill.GetValueOrDefault("name", "nobody at all"), e.Href, StringComparison.Ordinal));
}
