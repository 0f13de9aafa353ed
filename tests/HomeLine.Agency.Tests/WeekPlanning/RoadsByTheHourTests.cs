using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>Slow hours of the agency's map and reported closures reach the planner, and the drives that are shown. Invented data.</summary>
public sealed class RoadsByTheHourTests
{
    private static readonly AgencyRoster Slow = DemoAgency.Roster with
    {
        Map = DemoAgency.Roster.Map with
        {
            Roads = DemoAgency.Roster.Map.Roads with
            {
                SlowTimes = [new SlowTime([IsoDayOfWeek.Monday, IsoDayOfWeek.Tuesday], new LocalTime(7, 0), new LocalTime(9, 0), 50)],
            },
        },
    };

    [Fact]
    public void Slow_hours_are_those_of_their_weekdays_in_plan_minutes()
    {
        WeekDemand demand = WeekDemand.Of(Slow, DemoAgency.Files, DemoAgency.FirstDay, 14, DemoAgency.Now);
        Assert.Equal([0, 1, 7, 8], demand.Problem.SlowHours.Select(s => s.From / 1440));
        Assert.All(demand.Problem.SlowHours, s => Assert.Equal((420, 540, 50), (s.From % 1440, s.To % 1440, s.SpeedPercent)));
        Assert.Empty(WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Problem.SlowHours);
    }

    [Fact]
    public void The_first_drive_of_a_slow_morning_takes_longer_and_the_rest_of_the_week_is_as_it_was()
    {
        DayRoute Route(AgencyRoster roster, int day) => DayRoute.Of(roster, DemoAgency.Files, DemoAgency.Published, "N1", DemoAgency.FirstDay.PlusDays(day));
        Assert.True(Route(Slow, 0).Stops[0].TravelBefore > Route(DemoAgency.Roster, 0).Stops[0].TravelBefore);
        Assert.Equal(Route(DemoAgency.Roster, 0).Stops[^1].TravelBefore, Route(Slow, 0).Stops[^1].TravelBefore);
        Assert.Equal(Route(DemoAgency.Roster, 2).DrivingMinutes, Route(Slow, 2).DrivingMinutes);
    }

    [Fact]
    public void A_week_planned_while_a_pass_is_closed_knows_it()
    {
        LocalDateTime noon = DemoAgency.FirstDay.PlusDays(2).At(new LocalTime(12, 0));
        var closed = new RoadShut(["Larch Pass"], [], noon, noon.PlusHours(6), "snow");
        WeekDemand demand = WeekDemand.Ahead(DemoAgency.Roster, [], DemoAgency.FirstDay, DemoAgency.Now).WithClosures([closed], DemoAgency.Roster);
        RoadChange change = Assert.Single(demand.Problem.RoadChanges);
        Assert.Equal(((2 * 1440) + 720, (2 * 1440) + 1080), (change.From, change.To));
        Assert.Empty(WeekDemand.Ahead(DemoAgency.Roster, [], DemoAgency.FirstDay, DemoAgency.Now).Problem.RoadChanges);
    }
}
