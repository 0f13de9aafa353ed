using HomeLine.Agency.Roster;
using HomeLine.Web.Pages.DayMap;

namespace HomeLine.Web.Tests.Pages.DayMap;

public sealed class MapWindowTests
{
    private static readonly AgencyMap Map = new() { BranchPlace = new MapPoint(24, 14), Roads = new RoadFactors(1.3, [], 4) };

    [Fact]
    public void The_whole_map_is_seen_with_north_above()
    {
        MapWindow whole = MapWindow.Whole(Map);

        Assert.Equal("0 0 1200 880", whole.ViewBox);
        Assert.Equal(0, whole.Down(44));
        Assert.Equal(880, whole.Down(0));
    }

    [Fact]
    public void Nearer_and_farther_never_leave_the_map()
    {
        MapWindow near = MapWindow.Whole(Map).Zoomed(2);

        Assert.Equal("300 220 600 440", near.ViewBox);
        Assert.Equal("0 220 600 440", near.Moved(-1, 0).Moved(-1, 0).Moved(-1, 0).ViewBox);
        Assert.Equal("0 0 1200 880", near.Moved(1, 1).Zoomed(0.1).ViewBox);
        Assert.Equal(16, near.Zoomed(100).Zoom);
    }

    [Fact]
    public void A_way_is_shown_with_a_margin()
    {
        MapWindow around = MapWindow.Around(Map, [new MapPoint(20, 10), new MapPoint(30, 16)]);

        Assert.Equal(60.0 / 14, around.Zoom, 3);
    }

    [Fact]
    public void Words_never_cover_each_other_and_come_back_when_one_goes_nearer()
    {
        (string, MapPoint, string)[] crowd = [.. Enumerable.Range(0, 12).Select(i => ($"P{i:00}", new MapPoint(24 + (i % 4 * 0.7), 14 + (i / 4 * 0.7)), "code"))];

        int far = MapLabels.Place(MapWindow.Whole(Map), crowd, 13, 12).Length;
        int near = MapLabels.Place(MapWindow.Around(Map, [.. crowd.Select(c => c.Item2)]), crowd, 13, 12).Length;

        Assert.InRange(far, 1, 11);
        Assert.Equal(12, near);
    }
}
