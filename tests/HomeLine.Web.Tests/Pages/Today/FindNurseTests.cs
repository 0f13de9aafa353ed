using Bunit;
using HomeLine.Agency.Today;
using HomeLine.Web.Pages.Today;

namespace HomeLine.Web.Tests.Pages.Today;

public sealed class FindNurseTests : BunitContext
{
    private static readonly NurseToday[] Nurses = [new("N1", "Juniper Brasslock", "RN", ""), new("N2", "Rowan Thistlequay", "RN", "Leave"), new("N4", "Tansy Oxbowe", "RN", "")];

    private NurseToday? chosen;

    [Fact]
    public void Two_letters_find_a_nurse_and_Enter_takes_her()
    {
        var find = Show();

        find.Find("input").Input("Ju");
        Assert.Equal("Juniper Brasslock", Assert.Single(find.FindAll("[role=option] strong")).TextContent);
        find.Find("input").KeyDown("Enter");

        Assert.Equal("N1", chosen?.Id);
    }

    [Fact]
    public void The_number_finds_her_too_and_an_absence_is_said()
    {
        var find = Show();

        find.Find("input").Input("n2");

        Assert.Contains("Leave", find.Find("[role=option]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void One_letter_finds_nobody_yet()
    {
        var find = Show();

        find.Find("input").Input("J");

        Assert.Empty(find.FindAll("[role=option]"));
    }

    private IRenderedComponent<FindNurse> Show()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        return Render<FindNurse>(with => with.Add(f => f.Nurses, [.. Nurses]).Add(f => f.ChosenChanged, nurse => chosen = nurse));
    }
}
