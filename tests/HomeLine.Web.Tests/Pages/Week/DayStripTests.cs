using System.Collections.Immutable;
using AngleSharp.Dom;
using Bunit;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;
using HomeLine.Web.Pages.Week;
using HomeLine.Web.Pages.WeekEditing;
using HomeLine.Web.Tests.Pages.WeekEditing;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Week;

/// <summary>The days a phone shows above the visits of one. Invented counts.</summary>
public sealed class DayStripTests : BunitContext
{
    private static readonly LocalDate Monday = Arrangement.Monday;
    private static readonly ImmutableArray<DayInStrip> Days = DayInStrip.Blank(Monday).SetItem(1, new DayInStrip(Monday.PlusDays(1), 14, 2, 1));

    public DayStripTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void Each_day_says_its_visits_what_is_late_and_what_is_unmet_in_words_and_with_a_sign()
    {
        IElement tuesday = Strip(Monday.PlusDays(1)).FindAll("li a")[1];

        Assert.Contains("Tue 9 Mar, today: 14 visits, 2 late, 1 unmet", tuesday.TextContent, StringComparison.Ordinal);
        Assert.Contains("▲ 2", tuesday.TextContent, StringComparison.Ordinal);
        Assert.Contains("○ 1", tuesday.TextContent, StringComparison.Ordinal);
        Assert.Equal("date", tuesday.GetAttribute("aria-current"));
    }

    [Fact]
    public void A_week_without_a_plan_counts_nothing()
    {
        IElement monday = Strip(Monday).FindAll("li a")[0];

        Assert.Contains("Mon 8 Mar: no plan", monday.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("visit", monday.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_is_a_plain_link_and_the_steps_lead_out_of_the_week_too()
    {
        IRenderedComponent<DayStrip> strip = Strip(Monday);

        Assert.Equal("/week/2027-03-08?day=2027-03-10", strip.FindAll("li a")[2].GetAttribute("href"));
        Assert.Equal(["/week/2027-03-01?day=2027-03-07", "/week/2027-03-08?day=2027-03-09"], strip.FindAll(".day-steps a").Select(a => a.GetAttribute("href")));
        Assert.Contains("Day before, Sun 7 Mar", strip.Find(".day-steps a").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Left_and_right_lead_from_day_to_day_and_other_keys_do_not()
    {
        IRenderedComponent<DayStrip> strip = Strip(Monday);
        NavigationManager addresses = Services.GetRequiredService<NavigationManager>();

        strip.Find("nav").KeyDown(new KeyboardEventArgs { Key = "ArrowRight" });
        Assert.EndsWith("?day=2027-03-09", addresses.Uri, StringComparison.Ordinal);
        strip.Find("nav").KeyDown(new KeyboardEventArgs { Key = "ArrowLeft" });
        Assert.EndsWith("?day=2027-03-07", addresses.Uri, StringComparison.Ordinal);
        strip.Find("nav").KeyDown(new KeyboardEventArgs { Key = "ArrowRight", AltKey = true });
        strip.Find("nav").KeyDown(new KeyboardEventArgs { Key = "Tab" });
        Assert.EndsWith("?day=2027-03-07", addresses.Uri, StringComparison.Ordinal);
    }

    [Fact]
    public void While_something_is_in_hand_each_day_says_how_many_places_work()
    {
        InHand held = InHandTests.Held with { Places = [InHandTests.Place(Monday, "N1", 2)] };
        var board = new DraftBoard(Monday, 0, 1, [Monday, Monday.PlusDays(1)], [], new CheckReport([], default, new PlanFigures(0, 0, 0, 0, 0, 0, 0, 0)), EditLog.Of([], 1, 0), 0, null, "");

        Assert.Equal(["no visit, 1 place works", "no visit, no place works"], DayInStrip.Of(board, [], held).Select(d => d.InWords));
    }

    [Fact]
    public void Late_and_unmet_are_counted_on_their_day_and_a_second_person_is_not_one_more_visit()
    {
        BoardStop late = Arrangement.Stop(Arrangement.Visit(), isLate: true);
        var board = new WeekBoard(
            new PlannedWeek { FirstDay = Monday, Visits = [], Unmet = [] }, false, [Monday, Monday.PlusDays(1)], [Arrangement.Nurse(late, late with { AsSecond = true })],
            [new UnmetNeed(late.Visit.Patient, "labs", [], []) { LastDay = Monday.PlusDays(1) }, new UnmetNeed(late.Visit.Patient, "stored before days were kept", [], [])],
            new CheckReport([], default, new PlanFigures(0, 0, 0, 0, 0, 0, 0, 0)), Arrangement.At(Monday));

        Assert.Equal(["1 visit, 1 late", "no visit, 1 unmet"], DayInStrip.Of(board).Select(d => d.InWords));
    }

    private IRenderedComponent<DayStrip> Strip(LocalDate shown) => Render<DayStrip>(with => with
        .Add(s => s.Days, Days).Add(s => s.Shown, shown).Add(s => s.Today, Monday.PlusDays(1))
        .Add(s => s.Address, day => $"/week/{WeekOf.MondayOf(day):uuuu-MM-dd}?day={day:uuuu-MM-dd}"));
}
