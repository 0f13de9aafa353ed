using Bunit;
using HomeLine.Agency.Visits;
using HomeLine.LineCare.Lines;
using HomeLine.Web.Pages.Visits;

namespace HomeLine.Web.Tests.Pages.Visits;

/// <summary>Last time beside today, in words.</summary>
public sealed class LinePartTests : BunitContext
{
    private static readonly LineBrief Brief = new()
    {
        Line = new Line { Id = new LineId("P03-1"), Patient = new PatientId("P03"), Kind = LineKind.Picc, Lumens = [new Lumen("A"), new Lumen("B")] },
        Label = "PICC, 2 lumens, right cephalic",
        LastDressing = "film, Wed 3 Mar",
        LastLengthCm = 2.5m,
        LastLengthOn = "Wed 3 Mar",
        LastSite = "Wed 3 Mar, Juniper Brasslock: Found: redness at the site. Size of a coin.",
        Locks = ["Lumen B is occluded: not for use, do not force."],
    };

    private IRenderedComponent<LinePart> Show(params VisitFault[] faults) => Render<LinePart>(with => with
        .Add(p => p.Line, Brief)
        .Add(p => p.Entry, new LineEntry { Line = Brief.Line.Id, Lumens = [new LumenEntry("A", false), new LumenEntry("B", false)] })
        .Add(p => p.Faults, [.. faults]));

    [Fact]
    public void Last_times_findings_stand_beside_todays_question()
    {
        string then = Show().Find(".then").TextContent;
        Assert.Contains("redness at the site. Size of a coin.", then, StringComparison.Ordinal);
        Assert.Contains("2.5 cm, Wed 3 Mar", then, StringComparison.Ordinal);
        Assert.Contains("not measured", then, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_answered_beforehand() => Assert.Empty(Show().FindAll("input[checked]"));

    [Fact]
    public void A_red_flag_says_call_in_words_and_a_lock_stands_above_the_form()
    {
        var part = Show();
        Assert.Contains(part.FindAll(".when-some .choice"), choice => choice.TextContent.Contains("pus (call)", StringComparison.Ordinal));
        Assert.DoesNotContain(part.FindAll(".when-some .choice"), choice => choice.TextContent.Contains("bruising (call)", StringComparison.Ordinal));
        Assert.Contains("do not force", part.Find(".notice.bad").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_stands_at_the_line_it_is_about()
    {
        Assert.Contains("what did the site look like", Show(new VisitFault("line P03-1", VisitCodes.SiteUnsaid, "what did the site look like?")).Find(".error").TextContent, StringComparison.Ordinal);
        Assert.Empty(Show(new VisitFault("line P03-2", VisitCodes.SiteUnsaid, "another line")).FindAll(".error"));
    }
}
