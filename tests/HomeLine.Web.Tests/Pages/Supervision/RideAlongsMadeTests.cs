using Bunit;
using HomeLine.Agency.Supervision;
using HomeLine.Planning.Plans;
using HomeLine.Web.Pages.Supervision;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Supervision;

public sealed class RideAlongsMadeTests : BunitContext
{
    private static readonly RideAlong Made = new()
    {
        Id = "ride 1",
        Nurse = "N5",
        Supervisor = "N4",
        SupervisorName = "Tansy Oxbowe",
        Day = Arrangement.Monday,
        Note = "Hands and dressing.",
        OnVisit = "P35 Mon 09:40",
        RecordedBy = "Hyssop",
        RecordedAt = Arrangement.At(Arrangement.Monday),
    };

    [Fact]
    public void A_wrong_record_is_taken_back_with_the_reason_that_was_typed()
    {
        (string, string) asked = default;
        IRenderedComponent<RideAlongsMade> list = Render<RideAlongsMade>(p => p
            .Add(l => l.List, List([Made], []))
            .Add(l => l.Name, _ => "Linden Pennywhirl")
            .Add(l => l.MayTakeBack, _ => true)
            .Add(l => l.TakeBack, a => asked = a));

        Assert.Contains("Mon 8 Mar: Tansy Oxbowe with Linden Pennywhirl, as planned on P35 Mon 09:40: Hands and dressing.", list.Markup, StringComparison.Ordinal);
        list.Find("input").Change("it was the day before");
        list.Find("button").Click();
        Assert.Equal(("ride 1", "it was the day before"), asked);
    }

    [Fact]
    public void What_was_taken_back_stays_readable_with_who_and_why_and_who_may_not_sees_no_button()
    {
        var back = new RideAlongTakenBack { Ride = "ride 1", Why = "it was the day before", By = "Hyssop", At = Arrangement.At(Arrangement.Monday) };

        IRenderedComponent<RideAlongsMade> list = Render<RideAlongsMade>(p => p.Add(l => l.List, List([Made], [(Made, back)])).Add(l => l.Name, id => id));

        Assert.Contains("taken back by Hyssop: it was the day before", list.Markup, StringComparison.Ordinal);
        Assert.Empty(list.FindAll("button"));
    }

    [Fact]
    public void Each_nurse_says_by_when_and_why_and_where_it_is_planned()
    {
        var due = new RideAlongDue("N5", "Linden Pennywhirl", false, Arrangement.Monday.PlusDays(-1), Made, Arrangement.Visit() with { Second = "N4" },
            new PlanningReason(RideAlongDue.Again, "Somebody goes along at least every 60 days.", "Send a registered nurse along by then."));

        IRenderedComponent<RideAlongTable> table = Render<RideAlongTable>(p => p.Add(t => t.List, List([], []) with { Due = [due] }));

        Assert.Contains("▲ late: Sun 7 Mar", table.Find("td[data-head='Due by']").TextContent, StringComparison.Ordinal);
        Assert.Contains("Mon 8 Mar 09:00, P03, with N4", table.Find("td[data-head='Planned']").TextContent, StringComparison.Ordinal);
        Assert.Contains("at least every 60 days", table.Find("td[data-head='Why']").TextContent, StringComparison.Ordinal);
    }

    private static RideAlongList List(RideAlong[] made, (RideAlong, RideAlongTakenBack)[] back) => new([], [], [.. made], [.. back], new LocalDate(2027, 3, 8));
}
