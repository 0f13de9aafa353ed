using System.Collections.Immutable;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Problem;

/// <summary>Expected figures are our own demonstration map, worked by hand: 1.3 x path, three speeds, four minutes to park.</summary>
public sealed class MapTravelTests
{
    [Theory]
    [InlineData(23, 13, 26, 15, 3.61, 14)]
    [InlineData(23, 13, 40, 10, 17.26, 24)]
    [InlineData(29, 35, 24, 14, 24.71, 32)]
    [InlineData(5, 16, 30, 34, 35.94, 45)]
    [InlineData(56, 20, 40, 10, 18.87, 26)]
    public void Paths_go_through_bridges_and_passes(double x1, double y1, double x2, double y2, double km, int minutes)
    {
        MapTravel travel = Between(new(x1, y1), new(x2, y2));
        Assert.Equal(km, travel.Kilometres(0, 1), 2);
        Assert.Equal(minutes, travel.Minutes(0, 1));
        Assert.Equal(minutes, travel.Minutes(1, 0));
    }

    [Fact]
    public void A_closed_pass_sends_the_road_round_by_the_bridges()
    {
        MapTravel travel = Between(new(29, 35), new(24, 14)).WithClosed(["Larch Pass"]);
        Assert.Equal(53.75, travel.Kilometres(0, 1), 2);
        Assert.Equal(64, travel.Minutes(0, 1));
    }

    [Fact]
    public void Opening_the_pass_again_gives_the_old_time_back()
    {
        MapTravel travel = Between(new(29, 35), new(24, 14));
        Assert.Equal(32, travel.WithClosed(["Larch Pass"]).WithClosed([]).Minutes(0, 1));
    }

    [Fact]
    public void With_every_crossing_closed_there_is_no_way_over_the_river()
    {
        MapTravel travel = Between(new(5, 16), new(24, 14)).WithClosed(["South Bridge", "North Bridge"]);
        Assert.Equal(ITravelTimes.Unreachable, travel.Minutes(0, 1));
    }

    [Fact]
    public void Two_homes_at_one_address_cost_the_parking_minutes() =>
        Assert.Equal(4, Between(new(24, 14), new(24, 14)).Minutes(0, 1));

    [Fact]
    public void An_unknown_closure_is_refused()
    {
        MapTravel travel = Between(new(0, 0), new(1, 1));
        ArgumentException refused = Assert.Throws<ArgumentException>(() => travel.WithClosed(["Nowhere Gap"]));
        Assert.Contains("Nowhere Gap", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_without_coordinates_is_refused() =>
        Assert.Throws<ArgumentException>(() => Between(new(double.NaN, 0), new(1, 1)));

    private static MapTravel Between(MapPoint a, MapPoint b) =>
        new(ImmutableArray.Create(a, b), DemoMap.Barriers, MapSettings.Default);
}
