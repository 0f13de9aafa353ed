using Bunit;
using HomeLine.Agency.Holidays;
using HomeLine.Web.Pages.Holidays;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Holidays;

public sealed class HolidayListTests : BunitContext
{
    private static readonly Holiday Founders = new()
    {
        Id = "holiday 1",
        Day = new LocalDate(2027, 3, 11),
        Name = "Founders’ day",
        Off = ["N1", "N2"],
        PutDownBy = "C. Coordinator",
        PutDownAt = Instant.FromUtc(2027, 3, 1, 9, 0),
    };

    [Fact]
    public void A_day_says_who_works_who_has_hours_by_accident_and_what_is_published()
    {
        IRenderedComponent<HolidayList> list = Show(new HolidayRow(Founders, ["Hyssop Lanternlow"], ["Sorrel"], ["Juniper Brasslock"], 2));

        Assert.Contains("Thursday 11 March 2027: Founders’ day", list.Markup, StringComparison.Ordinal);
        Assert.Contains("On call: Hyssop Lanternlow. Works all the same: Sorrel. Off: 2 nurses.", list.Markup, StringComparison.Ordinal);
        Assert.Contains("▲ Has hours on it all the same: Juniper Brasslock", list.Markup, StringComparison.Ordinal);
        Assert.Contains("2 published visits lie on it", list.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_taken_back_with_the_reason_that_was_typed()
    {
        (string, string) asked = default;
        IRenderedComponent<HolidayList> list = Render<HolidayList>(p => p
            .Add(l => l.Calendar, new HolidayCalendar(new LocalDate(2027, 3, 8), [new HolidayRow(Founders, [], [], [], 0)], []))
            .Add(l => l.MayChange, true)
            .Add(l => l.TakeBack, a => asked = a));

        list.Find("input").Change("entered by mistake");
        list.Find("button").Click();

        Assert.Equal(("holiday 1", "entered by mistake"), asked);
        Assert.Contains("▲ Nobody is on call.", list.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_right_there_is_nothing_to_press_and_an_empty_calendar_says_what_to_do()
    {
        Assert.Empty(Show(new HolidayRow(Founders, [], [], [], 0)).FindAll("button"));
        Assert.Contains("Put the year’s down ahead", Show().Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<HolidayList> Show(params HolidayRow[] rows) =>
        Render<HolidayList>(p => p.Add(l => l.Calendar, new HolidayCalendar(new LocalDate(2027, 3, 8), [.. rows], [])));
}
