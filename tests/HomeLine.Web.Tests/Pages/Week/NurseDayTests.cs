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
        NurseRow nurse = Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()));
        var reasons = Render<StopReasons>();
        var day = Show(nurse, reasons.Instance.Show);

        IElement stop = day.Find(".stop");
        Assert.Contains("from-13", stop.ClassList);
        Assert.Contains("long-12", stop.ClassList);
        Assert.Equal(reasons.Find("[popover]").Id, stop.QuerySelector("button")!.GetAttribute("popovertarget"));
        stop.QuerySelector("button")!.Click();
        Assert.Contains("Open from Mon 8 Mar", reasons.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_hours_stand_beside_the_lane_once_for_each_full_hour() =>
        Assert.Equal(9, Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()))).FindAll(".hour").Count);

    [Fact]
    public void The_road_before_a_visit_is_drawn_and_said() =>
        Assert.Equal("drive 14 min", Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()))).Find(".road").TextContent);

    [Fact]
    public void Late_care_and_a_held_visit_are_said_in_words()
    {
        WeekVisit held = Arrangement.Visit("V2", hour: 11) with { Held = "Wait for the clinical manager." };
        var reasons = Render<StopReasons>();
        var day = Show(Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit(), isLate: true), Arrangement.Stop(held)), reasons.Instance.Show);

        Assert.Contains("▲ late", day.FindAll(".stop button")[0].TextContent, StringComparison.Ordinal);
        Assert.Contains("held", day.FindAll(".stop > button")[1].TextContent, StringComparison.Ordinal);
        day.FindAll(".stop > button")[1].Click();
        Assert.Contains("Wait for the clinical manager.", reasons.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_way_to_record_a_visit_is_shown_to_those_who_may()
    {
        NurseRow nurse = Arrangement.Nurse(Arrangement.Stop(Arrangement.Visit()));

        Assert.Contains("Record the visit", Opened(nurse, mayRecord: true), StringComparison.Ordinal);
        Assert.DoesNotContain("Record the visit", Opened(nurse, mayRecord: false), StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_held_for_a_referral_is_not_called_a_visit_under_way()
    {
        WeekVisit place = Arrangement.Visit("held-T1") with { Care = [], Promise = HomeLine.Planning.Plans.PromiseState.Frozen };
        string opened = Opened(Arrangement.Nurse(Arrangement.Stop(place)), mayRecord: true);

        Assert.Contains("A place held for a referral: nobody is visited and nobody is told.", opened, StringComparison.Ordinal);
        Assert.DoesNotContain("under way", opened, StringComparison.Ordinal);
        Assert.DoesNotContain("What", opened, StringComparison.Ordinal);
    }

    private string Opened(NurseRow nurse, bool mayRecord)
    {
        var reasons = Render<StopReasons>(with => with.Add(r => r.MayRecord, mayRecord));
        reasons.InvokeAsync(() => reasons.Instance.Show(nurse, nurse.Days[0].Stops[0]));
        return reasons.Markup;
    }

    private IRenderedComponent<NurseDay> Show(NurseRow nurse, Action<NurseRow, BoardStop>? open = null) => Render<NurseDay>(with => with
        .Add(d => d.Open, open)
        .Add(d => d.Nurse, nurse).Add(d => d.Cell, nurse.Days[0]).Add(d => d.Scale, DayScale.For(nurse)));
}
