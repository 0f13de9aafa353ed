using Bunit;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;
using HomeLine.Web.Pages.Week;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Week;

/// <summary>One day of the week, as a phone shows it.</summary>
public sealed class OneDayTests : BunitContext
{
    public OneDayTests() => Services.AddAntiforgeryStub();

    [Fact]
    public void The_days_nurses_stand_there_with_their_visits_to_time_and_when_each_ends()
    {
        IRenderedComponent<OneDay> day = Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit())), Arrangement.Monday);

        Assert.Contains("Juniper Brasslock", day.Find("h3").TextContent, StringComparison.Ordinal);
        Assert.Contains("08:00 to 16:30", day.Find("h3").TextContent, StringComparison.Ordinal);
        Assert.Contains("until 10:00 · Dunmallow", day.Find(".stop button").TextContent, StringComparison.Ordinal);
        Assert.Equal("1 visit; 1 nurse works.", day.Find("[role=status]").TextContent);
        Assert.Empty(day.FindAll(".day-name"));
    }

    [Fact]
    public void A_day_on_which_nobody_works_says_so_and_who_is_away()
    {
        NurseRow away = Arrangement.Nurse() with { Days = [new NurseDayCell(Arrangement.Monday, null, null, "training", [], 0, 0)] };
        IRenderedComponent<OneDay> day = Show(away, Arrangement.Monday);

        Assert.Contains("Nobody works on this day.", day.Markup, StringComparison.Ordinal);
        Assert.Contains("Not working: Juniper Brasslock (training).", day.Markup, StringComparison.Ordinal);
        Assert.Empty(day.FindAll("select"));
    }

    private IRenderedComponent<OneDay> Show(NurseRow nurse, LocalDate shown) => Render<OneDay>(with => with
        .Add(d => d.Day, shown).Add(d => d.Map, "/map/2027-03-08")
        .Add(d => d.Board, new WeekBoard(
            new PlannedWeek { FirstDay = Arrangement.Monday, Visits = [], Unmet = [] }, false, [Arrangement.Monday], [nurse], [],
            new CheckReport([], default, new PlanFigures(0, 0, 0, 0, 0, 0, 0, 0)), Arrangement.At(Arrangement.Monday))));
}
