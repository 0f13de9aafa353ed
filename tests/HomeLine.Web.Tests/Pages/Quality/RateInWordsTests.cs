using Bunit;
using HomeLine.Agency.Quality;
using HomeLine.LineCare.Counting;
using HomeLine.Web.Pages.Quality;

namespace HomeLine.Web.Tests.Pages.Quality;

public sealed class RateInWordsTests : BunitContext
{
    private static QualityView View(int infections, int days, string definition = "") => new(
        Arrangement.Monday, Arrangement.Monday, Arrangement.Monday, [], [], days, infections,
        days > 0 ? RateInterval.Of(infections, days, 95) : null, 95, 3000, [], definition);

    private string Show(QualityView view) => Render<RateInWords>(with => with.Add(c => c.View, view)).Markup;

    [Fact]
    public void A_rate_stands_with_interval_method_and_definition()
    {
        string shown = Show(View(2, 4000, "The definition of 2026"));

        foreach (string needed in (string[])["0.50 for 1,000", "95 % interval 0.06 to 1.81", "Garwood", "The definition of 2026"])
            Assert.Contains(needed, shown, StringComparison.Ordinal);
        Assert.DoesNotContain("Too few line-days", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Few_line_days_are_said_to_be_too_few_to_compare() =>
        Assert.Contains("Too few line-days to compare", Show(View(0, 2130)), StringComparison.Ordinal);

    [Fact]
    public void Without_a_line_there_is_no_rate() => Assert.Contains("No central line was at home", Show(View(0, 0)), StringComparison.Ordinal);
}
