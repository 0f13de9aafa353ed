using CsCheck;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Problem;

/// <summary>Trips by the hour: slow hours, roads shut for a while, and that leaving later never arrives earlier.</summary>
public sealed class TripTimesTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    [Theory]
    // Half the usual speed from 08:00 to 09:00, a trip of 30 usual minutes, worked out by hand.
    [InlineData(7, 0, 7, 30)]
    [InlineData(7, 30, 8, 0)]
    [InlineData(7, 50, 8, 40)]
    [InlineData(8, 0, 9, 0)]
    [InlineData(8, 30, 9, 15)]
    [InlineData(9, 0, 9, 30)]
    public void A_slow_hour_covers_half_the_way_at_half_the_speed(int leaveHour, int leaveMinute, int arriveHour, int arriveMinute)
    {
        var trips = new TripTimes(new Thirty(), [], [new SlowHours(480, 540, 50)]);
        int leave = (leaveHour * 60) + leaveMinute, arrive = (arriveHour * 60) + arriveMinute;
        Assert.Equal(arrive - leave, trips.Leaving(0, 1, leave));
        Assert.Equal(arrive - leave, trips.Reaching(0, 1, arrive));
    }

    [Fact]
    public void Who_waits_for_a_road_to_open_is_there_as_soon_as_who_leaves_when_it_does()
    {
        var trips = new TripTimes(new Thirty(), [new RoadChange(600, 660, new Nowhere())], []);
        Assert.Equal(30, trips.Leaving(0, 1, 599));
        Assert.Equal(90, trips.Leaving(0, 1, 600));
        Assert.Equal(31, trips.Leaving(0, 1, 659));
        Assert.Equal(30, trips.Leaving(0, 1, 660));
        Assert.Equal(680 - 599, trips.Reaching(0, 1, 680));
        Assert.Equal(30, trips.Reaching(0, 1, 690));
    }

    [Fact]
    public void A_road_that_opens_on_another_day_is_not_waited_for()
    {
        var trips = new TripTimes(new Thirty(), [new RoadChange(600, 1440 + 60, new Nowhere())], []);
        Assert.Equal(ITravelTimes.Unreachable, trips.Leaving(0, 1, 700));
        Assert.Equal(90, trips.Leaving(0, 1, 1440));
    }

    [Fact]
    public void Within_a_day_leaving_later_never_arrives_earlier() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.Rich(seed), seed);
            TripTimes trips = TripTimes.Of(problem);
            int from = seed % 3, to = problem.Patients[0].Place;
            for (int leave = 360; leave < 1439; leave++)
                Assert.True(leave + trips.Leaving(from, to, leave) <= leave + 1 + trips.Leaving(from, to, leave + 1));
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void The_latest_departure_arrives_in_time_and_a_minute_later_does_not() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.Rich(seed), seed);
            TripTimes trips = TripTimes.Of(problem);
            int from = seed % 3, to = problem.Patients[0].Place;
            for (int arrive = 540; arrive < 1380; arrive++)
            {
                int leave = arrive - trips.Reaching(from, to, arrive);
                Assert.True(leave + trips.Leaving(from, to, leave) <= arrive);
                Assert.True(leave + 1 + trips.Leaving(from, to, leave + 1) > arrive);
            }
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void A_slower_hour_never_makes_a_trip_shorter_and_no_trip_is_shorter_than_its_least() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = RandomWeek.WithHours(RandomWeek.Rich(seed), seed);
            WeekProblem slower = problem with { SlowHours = [.. problem.SlowHours.Select(s => s with { SpeedPercent = Math.Max(1, s.SpeedPercent - (seed % 30)) })] };
            TripTimes trips = TripTimes.Of(problem), then = TripTimes.Of(slower);
            int from = seed % 3, to = problem.Patients[0].Place;
            for (int leave = 360; leave < 1440; leave++)
            {
                Assert.True(then.Leaving(from, to, leave) >= trips.Leaving(from, to, leave));
                Assert.True(trips.Leaving(from, to, leave) >= trips.Least(from, to));
            }
        },
        iter: 60,
        threads: 1);

    private sealed class Thirty : ITravelTimes
    {
        public int Minutes(int from, int to) => from == to ? 0 : 30;
    }

    private sealed class Nowhere : ITravelTimes
    {
        public int Minutes(int from, int to) => from == to ? 0 : ITravelTimes.Unreachable;
    }
}
