using HomeLine.LineCare.Policy;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>An open vascular-access policy set, public snapshot of April 2026, looked up second hand: "one published policy says so", and it contradicts
/// itself in places. Section beside each value; the default takes the stricter of its figures.</summary>
public sealed class OpenPolicySet2026
{
    [Theory]
    [InlineData("dressing.gauze.max", 2)] // post-insertion care 4.5.2.1
    [InlineData("dressing.gauzeunderfilm.max", 2)] // post-insertion care 4.5.2.2
    [InlineData("dressing.film.max", 7)] // post-insertion care 4.5.1.1
    [InlineData("dressing.none.healed.after", 21)] // post-insertion care 4.7.5.1
    [InlineData("set.intermittent.max", 24)] // administration sets 4.10.2.1
    [InlineData("set.pn.max", 24)] // administration sets 4.10.3.1
    [InlineData("set.lipid.max", 12)] // administration sets 4.10.4.1
    [InlineData("set.blood.units.max", 4)] // administration sets 4.10.7.1
    [InlineData("filter.pn.max", 24)] // filtration 4.1.1.4; its guide says 96 h
    [InlineData("filter.lipid.max", 12)] // filtration 4.1.1.5
    [InlineData("hub.scrub.min", 15)] // needleless-connector guide; its policy says 5 s
    [InlineData("hub.dry.alcohol", 5)] // needleless connectors 4.3.2.5
    [InlineData("hub.dry.chlorhexidine", 20)] // needleless connectors 4.3.2.5
    [InlineData("length.shortening", 2)] // malposition guide, inward migration
    [InlineData("girth.rise", 3)] // thrombosis policy, monitoring
    [InlineData("midline.dwell.review", 28)] // patient sheet, midline at home
    [InlineData("removal.cover.min", 24)] // air embolism 4.3; its guide says 30 to 60 min
    [InlineData("removal.rest.min", 30)] // air embolism 4.4
    [InlineData("fever.call", 38)] // patient sheet, when to call
    [InlineData("nutrition.weightgain.night", 0.5)] // patient sheet, home parenteral nutrition: 0.5 to 1 kg
    [InlineData("nutrition.weightgain.week", 2.3)] // the same sheet
    public void The_default_agrees_with_the_stricter_figure(string rule, double value) =>
        Assert.Equal((decimal)value, PolicyBook.Default.ValueOf(rule, Mar(8)));
}
