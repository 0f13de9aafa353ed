using Bunit;
using HomeLine.Agency.CheckIns;
using HomeLine.Web.Pages.Today;

namespace HomeLine.Web.Tests.Pages.Today;

public sealed class MissedSignsTests : BunitContext
{
    [Fact]
    public void Whom_to_call_stands_in_order_with_the_emergency_number_last()
    {
        MissedCheckIn missed = new("V1", "Pimpernel Flapstone", "No sign that Juniper is out again: due by 16:20.",
            [new NumberToCall("Juniper", "555-0101"), new NumberToCall("Bramble", "")], "911")
        {
            People = 2,
        };

        IRenderedComponent<MissedSigns> list = Render<MissedSigns>(p => p.Add(m => m.Missed, [missed]));

        Assert.Equal(["tel:555-0101", "tel:911"], list.FindAll("a").Select(a => a.GetAttribute("href")));
        Assert.Contains("Bramble: no number on the record", list.Markup, StringComparison.Ordinal);
        Assert.Contains("▲ A sign is missing: call now", list.Markup, StringComparison.Ordinal);
        Assert.Contains("Say that two people went in", list.Markup, StringComparison.Ordinal);
        Assert.Contains("Say that one nurse went in", Render<MissedSigns>(p => p.Add(m => m.Missed, [missed with { People = 1 }])).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_missing_says_nothing() => Assert.Equal("", Render<MissedSigns>(p => p.Add(m => m.Missed, [])).Markup.Trim());
}
