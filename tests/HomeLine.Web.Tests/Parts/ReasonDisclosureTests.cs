using Bunit;
using HomeLine.LineCare.Windows;
using HomeLine.Web.Parts;

namespace HomeLine.Web.Tests.Parts;

public sealed class ReasonDisclosureTests : BunitContext
{
    [Fact]
    public void A_reason_names_rule_value_level_source_and_what_gave_way()
    {
        var shown = Show(Arrangement.Film);

        string text = shown.Find("details").TextContent;
        Assert.Contains("Film changed Wednesday 3 March; at most 7 days.", text, StringComparison.Ordinal);
        Assert.Contains("dressing.film.max", text, StringComparison.Ordinal);
        Assert.Contains("7 days", text, StringComparison.Ordinal);
        Assert.Contains("The agency’s policy", text, StringComparison.Ordinal);
        Assert.Contains("Policy 12, signed 2027-01-04", text, StringComparison.Ordinal);
        Assert.Contains("the agency's rule is stricter", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reason_leads_to_its_ledger_entry_by_identifiers_alone() =>
        Assert.Equal("/patients/P03?entry=E-17", Show(Arrangement.Film).Find("a").GetAttribute("href"));

    [Fact]
    public void A_window_without_an_anchor_says_so_and_links_nowhere()
    {
        var shown = Show(Arrangement.Film with
        {
            Standing = WindowStanding.DateUnknown,
            Because = Arrangement.Film.Because with { Anchor = null, AnchorDate = null, Overrode = [] },
        });

        Assert.Contains("no dated entry", shown.Find("details").TextContent, StringComparison.Ordinal);
        Assert.Empty(shown.FindAll("a"));
    }

    [Fact]
    public void The_disclosure_is_a_native_one_so_that_every_keyboard_opens_it() =>
        Assert.StartsWith("Why", Show(Arrangement.Film).Find("details > summary").TextContent, StringComparison.Ordinal);

    private IRenderedComponent<ReasonDisclosure> Show(DueWindow window) =>
        Render<ReasonDisclosure>(with => with.Add(r => r.Window, window).Add(r => r.About, "Dressing (film), Clover Zigzagby"));
}
