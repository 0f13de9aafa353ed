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

    [Fact]
    public void The_way_to_record_a_visit_is_shown_to_those_who_may()
    {
        NurseRow nurse = Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()));

        Assert.Contains("Record the visit", Show(nurse, mayRecord: true).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Record the visit", Show(nurse).Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<NurseDay> Show(NurseRow nurse, bool mayRecord = false) => Render<NurseDay>(with => with
        .Add(d => d.MayRecord, mayRecord)
        .Add(d => d.Nurse, nurse).Add(d => d.Cell, nurse.Days[0]).Add(d => d.Scale, DayScale.For(nurse)));
}
