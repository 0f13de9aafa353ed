using Bunit;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Web.Pages.WeekEditing;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.WeekEditing;

public sealed class LoadTableTests : BunitContext
{
    [Fact]
    public void Miles_and_paid_time_stand_beside_the_load_with_their_rule()
    {
        NurseLoad load = new("N1", "Juniper Brasslock", 5, 18, 200, 2, 0, 1_100, 290, 2_550, 0) { Paid = new PaidDay(1_445, 61.26, 96.04) };

        IRenderedComponent<LoadTable> table = Render<LoadTable>(p => p
            .Add(t => t.Rows, [load])
            .Add(t => t.Rules, new LoadRules(90, new LocalTime(17, 0), 4))
            .Add(t => t.Paid, new PaidRules(true, 20, false, 0)));

        Assert.Equal(["96.0", "61.3", "24 h 5 min"], table.FindAll("tbody td").TakeLast(3).Select(c => c.TextContent));
        Assert.Contains("time is paid beyond 20 minutes each way and miles are not paid.", table.Markup, StringComparison.Ordinal);
    }
}
