using Bunit;
using HomeLine.Agency.Due;
using HomeLine.Web.Pages.Due;

namespace HomeLine.Web.Tests.Pages.Due;

public sealed class DueGroupTests : BunitContext
{
    [Fact]
    public void A_row_says_whose_what_when_and_by_which_visit()
    {
        string row = Show(Urgency.Late).Find(".due-patient").TextContent;

        Assert.Contains("Clover Zigzagby", row, StringComparison.Ordinal);
        Assert.Contains("PICC, 2 lumens", row, StringComparison.Ordinal);
        Assert.Contains("Dressing (film)", row, StringComparison.Ordinal);
        Assert.Contains("Mon 8 to Wed 10 March", row, StringComparison.Ordinal);
        Assert.Contains("Wed 10 Mar 13:12", row, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_ahead_stays_folded_until_asked_for()
    {
        var group = Show(Urgency.Ahead, isFolded: true);
        Assert.Empty(group.FindAll(".due-line"));

        group.Find("button").Click();

        Assert.Single(group.FindAll(".due-line"));
    }

    [Fact]
    public void The_address_of_a_patient_holds_the_identifier_and_no_name() =>
        Assert.Equal("/patients/P03", Show(Urgency.Open).Find(".due-who a").GetAttribute("href"));

    private IRenderedComponent<DueGroup> Show(Urgency urgency, bool isFolded = false) =>
        Render<DueGroup>(with => with.Add(g => g.Of, urgency).Add(g => g.Rows, [Arrangement.Row(urgency)]).Add(g => g.Folded, isFolded));
}
