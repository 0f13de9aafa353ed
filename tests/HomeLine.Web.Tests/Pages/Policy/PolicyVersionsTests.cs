using Bunit;
using HomeLine.Agency.PolicyLibrary;
using HomeLine.LineCare.Policy;
using HomeLine.Web.Pages.Policy;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Policy;

public sealed class PolicyVersionsTests : BunitContext
{
    private static readonly PolicyDraft Draft = new()
    {
        Number = 1,
        EffectiveFrom = Arrangement.Monday,
        Changes = [new RuleChange("dressing.film.max", 6, "days", "Agency paper 7")],
        Note = "agreed in the case conference",
        DraftedById = "u",
        DraftedBy = "H. Educator RN",
        DraftedAt = Arrangement.At(Arrangement.Monday),
    };

    private static PolicyShelf Shelf(LocalDate today) => new(
        PolicyBook.Default.With(Draft.Rules("S. Lead RN")),
        [new PolicyVersion(Draft, new PolicyVerdict(1, PolicyFate.Approved, "v", "S. Lead RN", Arrangement.At(Arrangement.Monday), ""))],
        today);

    [Fact]
    public void A_version_says_from_when_why_and_who_drafted_and_approved_it()
    {
        string page = Render<PolicyVersions>(with => with.Add(p => p.Shelf, Shelf(Arrangement.Monday)).Add(p => p.Zone, Arrangement.Zone)).Markup;

        foreach (string needed in (string[])["Monday 8 March 2027", "agreed in the case conference", "H. Educator RN", "S. Lead RN", "In force", "dressing.film.max: 7 days becomes 6 days"])
            Assert.Contains(needed, page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_version_of_a_later_day_is_not_yet_in_force() => Assert.Contains(
        "Approved, not yet in force",
        Render<PolicyVersions>(with => with.Add(p => p.Shelf, Shelf(Arrangement.Monday.PlusDays(-1))).Add(p => p.Zone, Arrangement.Zone)).Markup,
        StringComparison.Ordinal);

    [Fact]
    public void Who_may_not_edit_sees_rules_with_value_source_and_who_set_them_and_no_button()
    {
        var rules = Render<PolicyRules>(with => with.Add(p => p.Shelf, Shelf(Arrangement.Monday)).Add(p => p.InHand, []).Add(p => p.MayEdit, false));

        Assert.Empty(rules.FindAll("button"));
        foreach (string needed in (string[])["dressing.film.max", "6 days", "version 1, approved by S. Lead RN", "Agency paper 7"])
            Assert.Contains(needed, rules.Markup, StringComparison.Ordinal);
    }
}
