using System.Collections.Immutable;
using HomeLine.Web.Pages.Week;

namespace HomeLine.Web.Tests.Pages.Week;

/// <summary>Which nurses a week page shows. Invented names.</summary>
public sealed class NurseFilterTests
{
    private static readonly ImmutableArray<string> Towns = ["Cawsey", "Dunlow"];

    [Theory]
    [InlineData("thist", "", true)]
    [InlineData("THISTLE", "dunlow", true)]
    [InlineData("n2", "", true)]
    [InlineData("", "Cawsey", true)]
    [InlineData("N20", "", false)]
    [InlineData("n", "Cawsey", true)]
    [InlineData("thist", "Aldermere", false)]
    public void A_part_of_a_name_an_identifier_or_a_town_shows_those_nurses(string nurse, string area, bool shows) =>
        Assert.Equal(shows, NurseFilter.Of(nurse, area).Shows("N2", "Rowan Thistlequay", Towns));

    [Fact]
    public void What_fits_nobody_shows_nobody_and_nothing_asked_shows_all()
    {
        Assert.False(NurseFilter.Of("nobody of that name", null).Shows("N2", "Rowan Thistlequay", Towns));
        Assert.True(NurseFilter.Of("  ", null).Shows("N2", "Rowan Thistlequay", []));
        Assert.True(NurseFilter.Of(null, null).IsOff);
    }

    [Fact]
    public void The_address_holds_what_is_asked_and_leaves_the_rest_as_it_was()
    {
        Assert.Equal("/week/2027-03-08?draft=true&nurse=O%27Brass&area=Skerrow%20Spit", NurseFilter.Of("O'Brass", "Skerrow Spit").In("/week/2027-03-08?draft=true"));
        Assert.Equal("/week/2027-03-08", NurseFilter.Of("", "").In("/week/2027-03-08"));
    }
}
