using HomeLine.Agency.DayMap;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.Tests.DayMap;

/// <summary>Days of the demonstration week on its map. Invented data.</summary>
public sealed class DrawnDayTests
{
    private static readonly LocalDate Tuesday = new(2027, 3, 9);

    private static DrawnDay Day(LocalDate day) => AskDayMap.Of(DemoAgency.Roster, DemoAgency.Published, day, false);

    [Fact]
    public void The_ways_of_the_week_drive_as_long_as_the_published_plan() =>
        // 1,281 minutes stand in the scenario's own tables.
        Assert.Equal(1_281, Enumerable.Range(0, 7).Sum(d => Day(DemoAgency.FirstDay.PlusDays(d)).Ways.Sum(w => w.DrivingMinutes)));

    [Fact]
    public void A_way_across_the_river_bends_at_a_bridge()
    {
        NurseWay way = Day(Tuesday).Ways.Single(w => w.Nurse == "N6");

        Assert.Equal(["P55", "P53", "P56", "P54"], way.Stops.Select(s => s.Patient));
        Crossing[] bridges = [.. DemoAgency.Roster.Map.Barriers.Single(b => b.Vertical).Crossings];
        Assert.Contains(way.Stops[0].Over, name => bridges.Any(b => b.Name == name));
        Assert.Contains(way.Line, p => bridges.Any(b => b.At == p));
        Assert.Empty(way.Stops[1].Over);
    }

    [Fact]
    public void A_closed_crossing_is_driven_round()
    {
        AgencyMap map = DemoAgency.Roster.Map;
        Crossing first = Day(Tuesday).Ways.Single(w => w.Nurse == "N6").Stops[0].Over.Select(n => map.Barriers.SelectMany(b => b.Crossings).Single(c => c.Name == n)).First();
        AgencyRoster closed = DemoAgency.Roster with
        {
            Map = map with { Barriers = [.. map.Barriers.Select(b => b with { Crossings = [.. b.Crossings.Select(c => c.Name == first.Name ? c with { Closed = true } : c)] })] },
        };

        NurseWay way = AskDayMap.Of(closed, DemoAgency.Published, Tuesday, false).Ways.Single(w => w.Nurse == "N6");

        Assert.DoesNotContain(first.Name, way.Stops.SelectMany(s => s.Over));
        Assert.True(way.DrivingMinutes > Day(Tuesday).Ways.Single(w => w.Nurse == "N6").DrivingMinutes);
    }

    [Fact]
    public void Slow_hours_show_on_the_trips_they_slow_and_on_no_other()
    {
        AgencyMap map = DemoAgency.Roster.Map;
        AgencyRoster slow = DemoAgency.Roster with { Map = map with { Roads = map.Roads with { SlowTimes = [new SlowTime([IsoDayOfWeek.Tuesday], new LocalTime(6, 0), new LocalTime(9, 0), 50)] } } };

        NurseWay usual = Day(Tuesday).Ways[0], way = AskDayMap.Of(slow, DemoAgency.Published, Tuesday, false).Ways[0];

        Assert.Equal(way.DrivingMinutes - usual.DrivingMinutes, way.Hard.Sum(h => h.SlowMinutes));
        Assert.True(way.Stops[0].Hard?.SlowMinutes > 0);
        Assert.Null(way.Stops[^1].Hard);
        Assert.All(AskDayMap.Of(slow, DemoAgency.Published, Tuesday.PlusDays(1), false).Ways, w => Assert.Empty(w.Hard));
    }

    [Fact]
    public void Who_is_there_sooner_by_waiting_until_the_road_opens_waits_and_it_says_until_when()
    {
        NurseWay usual = Day(Tuesday).Ways.Single(w => w.Nurse == "N6");
        string[] every = [.. DemoAgency.Roster.Map.Barriers.Single(b => b.Vertical).Crossings.Select(c => c.Name)];
        var shut = new RoadShut([.. every], [], Tuesday.AtMidnight(), Tuesday.At(usual.Stops[0].Start), "flood");

        WayStop first = AskDayMap.Of(DemoAgency.Roster, DemoAgency.Published, Tuesday, false, [shut]).Ways.Single(w => w.Nurse == "N6").Stops[0];

        Assert.Equal("", first.NoWay);
        Assert.Equal(usual.Stops[0].TravelBefore, first.Hard?.WaitMinutes);
        Assert.Equal(usual.Stops[0].Start, first.Hard?.Opens);
        Assert.Equal(2 * usual.Stops[0].TravelBefore, first.TravelBefore);
    }

    [Fact]
    public void The_map_holds_codes_and_no_patients_name()
    {
        DrawnDay day = Day(Tuesday);

        Assert.Equal(60, day.Homes.Length);
        string written = string.Join(' ', day.Homes.Select(h => h.ToString()).Concat(day.Ways.SelectMany(w => w.Stops).Select(s => s.ToString())));
        Assert.All(DemoAgency.Roster.Patients, p => Assert.DoesNotContain(p.Name, written, StringComparison.Ordinal));
    }
}
