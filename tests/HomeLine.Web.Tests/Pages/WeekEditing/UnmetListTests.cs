using Bunit;
using HomeLine.Agency.WeekEditing;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using HomeLine.Web.Pages.WeekEditing;

namespace HomeLine.Web.Tests.Pages.WeekEditing;

public sealed class UnmetListTests : BunitContext
{
    private static readonly UnmetCareNeed Need = new(
        "t1", new PatientId("P60"), "Indigo Dapplethorn", "immunoglobulin", "Fri 12 Mar", true,
        [new PlanningReason("skill-missing", "No nurse with IG licensed in Marrow works on Fri.", "Roster such a nurse.")],
        [new Relaxation("on-call", "Hyssop Lanternlow, on call on Thu, starting 09:40.", 300)]);

    [Fact]
    public void A_need_says_why_it_is_unmet_what_would_place_it_and_goes_into_the_hand()
    {
        UnmetCareNeed? held = null;
        IRenderedComponent<UnmetList> list = Render<UnmetList>(p => p.Add(l => l.Unmet, [Need]).Add(l => l.PickUp, need => held = need));

        Assert.Contains("1 need is unmet", list.Markup, StringComparison.Ordinal);
        Assert.Contains("▲ critical", list.Markup, StringComparison.Ordinal);
        Assert.Contains("No nurse with IG", list.Markup, StringComparison.Ordinal);
        Assert.Contains("on call on Thu", list.Markup, StringComparison.Ordinal);
        list.Find("button").Click();
        Assert.Equal("t1", held?.Key);
    }

    [Fact]
    public void A_long_list_begins_with_twelve_and_grows_when_asked()
    {
        IRenderedComponent<UnmetList> list = Render<UnmetList>(p => p.Add(l => l.Unmet, [.. Enumerable.Range(1, 30).Select(i => Need with { Key = $"t{i}" })]));

        Assert.Equal(12, list.FindAll("ul.unmet > li").Count);
        list.FindAll("button")[^1].Click();
        Assert.Equal(24, list.FindAll("ul.unmet > li").Count);
        Assert.Contains("Show 6 more", list.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_unmet_is_said_in_a_sentence() =>
        Assert.Contains("Every need is covered", Render<UnmetList>(p => p.Add(l => l.Unmet, [])).Markup, StringComparison.Ordinal);
}
