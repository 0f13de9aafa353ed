using Bunit;
using HomeLine.Agency.Due;
using HomeLine.Web.Parts;
using NodaTime;

namespace HomeLine.Web.Tests.Parts;

public sealed class WindowBarTests : BunitContext
{
    [Fact]
    public void The_bar_has_a_twin_in_words()
    {
        string? words = Show(Arrangement.Monday).Find("svg").GetAttribute("aria-label");

        Assert.Equal("Dressing (film): open, window Mon 8 Mar to Wed 10 Mar, today Mon 8 Mar", words);
    }

    [Fact]
    public void A_window_of_three_days_is_three_steps_long() =>
        Assert.Equal("60", Show(Arrangement.Monday).Find(".window-span").GetAttribute("width"));

    [Fact]
    public void A_window_long_past_is_a_mark_at_the_edge_and_not_a_bar() =>
        Assert.Empty(Show(Arrangement.Monday.PlusDays(40)).FindAll(".window-span"));

    private IRenderedComponent<WindowBar> Show(LocalDate today) =>
        Render<WindowBar>(with => with.Add(b => b.Row, Arrangement.Row(Urgency.Open)).Add(b => b.Today, today));
}
