using AngleSharp.Dom;
using Bunit;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Web.Pages.Week;

namespace HomeLine.Web.Tests.Pages.Week;

public sealed class NurseDayTests : BunitContext
{
    [Fact]
    public void A_visit_stands_where_it_is_in_time_and_opens_its_reasons()
    {
        var day = Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit())));

        IElement stop = day.Find(".stop");
        Assert.Contains("from-13", stop.ClassList);
        Assert.Contains("long-12", stop.ClassList);
        string? popover = stop.QuerySelector("button")!.GetAttribute("popovertarget");
        Assert.Contains("Open from Mon 8 Mar", day.Find("#" + popover).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void The_road_before_a_visit_is_drawn_and_said() =>
        Assert.Equal("drive 14 min", Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()))).Find(".road").TextContent);

    [Fact]
    public void Late_care_and_a_held_visit_are_said_in_words()
    {
        WeekVisit held = Arrangement.Visit("V2", hour: 11) with { Held = "Wait for the clinical manager." };
        var day = Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit(), isLate: true), Arrangement.Stop(held)));

        Assert.Contains("late care", day.FindAll(".stop button")[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("held", day.FindAll(".stop > button")[1].TextContent, StringComparison.Ordinal);
        Assert.Contains("Wait for the clinical manager.", day.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<NurseDay> Show(NurseRow nurse) => Render<NurseDay>(with => with
        .Add(d => d.Nurse, nurse).Add(d => d.Cell, nurse.Days[0]).Add(d => d.Scale, DayScale.For(nurse)));
}
