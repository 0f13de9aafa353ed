using Bunit;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.RedFlags;
using HomeLine.Web.Pages.ReportProblem;

namespace HomeLine.Web.Tests.Pages.ReportProblem;

public sealed class WhatIsSeenTests : BunitContext
{
    [Fact]
    public void Ticks_become_one_finding_and_the_same_day_answers_that_follow()
    {
        Seen? seen = null;
        var form = Render<WhatIsSeen>(with => with.Add(w => w.Done, told => seen = told));

        form.FindAll("input")[4].Change(true);
        form.FindAll("input")[5].Change(true);
        form.Find("form").Submit();

        Assert.Equal(SealFinding.EdgeLifted | SealFinding.Moisture, seen!.Finding);
        Assert.Equal(ScreenAnswer.Yes, seen.SameDay["dressing-lifting"]);
        Assert.Equal(ScreenAnswer.Yes, seen.SameDay["dressing-wet"]);
        Assert.Equal(ScreenAnswer.No, seen.SameDay["dressing-soiled"]);
    }

    [Fact]
    public void Nothing_ticked_is_asked_for_and_not_sent()
    {
        var isSent = false;
        var form = Render<WhatIsSeen>(with => with.Add(w => w.Done, _ => isSent = true));

        form.Find("form").Submit();

        Assert.False(isSent);
        Assert.Contains("Tick what is seen", form.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }
}
