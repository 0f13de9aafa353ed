using Bunit;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Web.Pages.OwnWeek;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.OwnWeek;

public sealed class OwnDaysTests : BunitContext
{
    [Fact]
    public void A_day_says_its_hours_its_doors_in_order_and_what_is_late_in_words()
    {
        IRenderedComponent<OwnDays> days = Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()), Arrangement.Stop(Arrangement.Visit("V2", "P04", 11), "Larkspur Cogglewick", isLate: true)));

        Assert.Contains("Mon 8 Mar, today", days.Find("h2").TextContent, StringComparison.Ordinal);
        Assert.Contains("08:00 to 16:30; 2 h in homes, 30 min driving", days.Markup, StringComparison.Ordinal);
        Assert.Equal(["09:00", "11:00"], days.FindAll("li > strong").Select(s => s.TextContent));
        Assert.Contains("▲ late", days.FindAll("li")[1].TextContent, StringComparison.Ordinal);
        Assert.Contains("14 min drive, 1 h there: weekly bundle", days.FindAll("li")[0].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_off_says_so_and_why()
    {
        NurseRow nurse = Arrangement.Nurse() with { Days = [new NurseDayCell(Arrangement.Monday, null, null, "Founders’ day", [], 0, 0)] };

        Assert.Contains("Founders’ day; no visit", Show(nurse).Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<OwnDays> Show(NurseRow nurse) => Render<OwnDays>(p => p.Add(d => d.Nurse, nurse).Add(d => d.Today, new LocalDate(2027, 3, 8)));
}
