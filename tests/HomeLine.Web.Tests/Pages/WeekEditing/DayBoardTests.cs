using AngleSharp.Dom;
using Bunit;
using HomeLine.Agency.WeekEditing;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Web.Pages.WeekEditing;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.WeekEditing;

public sealed class DayBoardTests : BunitContext
{
    private static readonly LocalDate Monday = Arrangement.Monday;

    private static DraftBoard Board(params DraftStop[] stops) => new(
        Monday, 1, 1, [Monday],
        [
            new DraftNurse("N1", "Juniper Brasslock", "RN", [new DraftDay(Monday, new LocalTime(8, 0), new LocalTime(16, 30), "", new LocalTime(12, 0), 30, [.. stops], 40, 18 * 60, 90)]),
            new DraftNurse("N2", "Rowan Thistlequay", "RN", [new DraftDay(Monday, null, null, "Leave", null, 0, [], 0, 0, 0)]),
        ],
        new CheckReport([], default, new PlanFigures(1, 60, 15, 40, 90, 1, 510, 0)), EditLog.Of([], 1, 0), 0, null, "");

    private static DraftStop Stop(string stays = "", bool pinned = false, bool changed = false) =>
        new(Arrangement.Visit(), "Clover Zigzagby", "Dunmallow", false, 14, true, stays, pinned, null, changed);

    [Fact]
    public void A_visit_hangs_where_it_is_in_time_with_its_signs_in_words()
    {
        IRenderedComponent<DayBoard> board = Render<DayBoard>(p => p.Add(b => b.Board, Board(Stop("Pinned.", pinned: true, changed: true))).Add(b => b.Day, Monday));

        IElement hangs = board.Find(".hangs");
        Assert.Contains("at-13", hangs.ClassList);
        Assert.Contains("for-12", hangs.ClassList);
        Assert.Contains("pinned, late care, not as published", hangs.TextContent, StringComparison.Ordinal);
        Assert.Equal("drive 14 min", board.Find(".road").TextContent);
        Assert.Equal("break 12:00, 30 min", board.Find(".pause").TextContent);
        Assert.Contains("90 min after the shift", board.Find(".home").TextContent, StringComparison.Ordinal);
        Assert.Contains("Rowan Thistlequay (Leave)", board.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Places_that_work_are_buttons_with_their_price_and_the_one_looked_at_is_marked()
    {
        int looked = -1;
        InHand held = new("P03", Stop(), null, [InHandTests.Place(Monday, "N1", 2)], 0);
        IRenderedComponent<DayBoard> board = Render<DayBoard>(p => p
            .Add(b => b.Board, Board(Stop())).Add(b => b.Day, Monday).Add(b => b.Held, held).Add(b => b.Look, index => looked = index));

        IElement place = board.Find("button.place");
        Assert.Contains("looked-at", place.ClassList);
        Assert.Contains("Mon 8 Mar, Nurse N1, first of the day, 09:02. 2 min more driving, 1 family to tell", place.TextContent, StringComparison.Ordinal);
        place.Click();
        Assert.Equal(0, looked);
    }

    [Fact]
    public void A_cell_says_whether_what_is_held_may_go_there()
    {
        InHand held = new("P03", Stop(), null, [InHandTests.Place(Monday, "N1", 2)]);
        IRenderedComponent<WeekStrip> lit = Render<WeekStrip>(p => p.Add(s => s.Board, Board(Stop())).Add(s => s.Chosen, Monday).Add(s => s.Held, held));
        IRenderedComponent<WeekStrip> dim = Render<WeekStrip>(p => p.Add(s => s.Board, Board(Stop())).Add(s => s.Chosen, Monday).Add(s => s.Held, held with { Places = [] }));

        Assert.Contains("works", lit.Find("button.cell.lit").TextContent, StringComparison.Ordinal);
        Assert.Contains("no place works", dim.Find("button.cell.dim").TextContent, StringComparison.Ordinal);
        Assert.Contains("90 min over", lit.Find("button.cell").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_forbidden_drop_says_the_rule_and_an_allowed_one_its_price_and_people()
    {
        var rule = new PlanningReason("skill-missing", "Linden Pennywhirl lacks PN.", "Choose a nurse with PN.");
        WhatIf forbidden = new([rule], null, [], 0, 0, 0, [], [], []);
        WhatIf allowed = new([], Arrangement.Visit(), TierWords.Compare(default, default(PlanScore) with { Work = 14 }), 14, 0, 0, ["P34 Thu 15:21 N6 starts 15:40."],
            [new WhoToTell(true, "P03", "Clover Zigzagby", "Juniper Brasslock comes Tue 9 Mar, 09:00 to 10:00.", true)], ["P03 dressing (P03-1): next due Tue 16 Mar instead of Sun 14 Mar."]);

        string no = Render<WhatItWouldDo>(p => p.Add(w => w.Then, forbidden)).Markup, yes = Render<WhatItWouldDo>(p => p.Add(w => w.Then, allowed)).Markup;

        Assert.Contains("A rule forbids it", no, StringComparison.Ordinal);
        Assert.Contains("lacks PN", no, StringComparison.Ordinal);
        foreach (string said in (string[])["14 min more driving", "P34 Thu 15:21 N6 starts 15:40", "P03 Clover Zigzagby", "next due Tue 16 Mar", "Work: 14 more"])
            Assert.Contains(said, yes, StringComparison.Ordinal);
    }
}
