namespace HomeLine.Planning.Problem;

/// <summary>Travel times with the fewest minutes of any hour: whatever is proven with them holds at all hours.</summary>
internal sealed class LeastTravel(TripTimes trips) : ITravelTimes
{
    public int Minutes(int from, int to) => trips.Least(from, to);

    /// <summary>A problem whose roads are never slower than another's, and the same at all hours.</summary>
    public static WeekProblem Of(WeekProblem problem) => TripTimes.Of(problem) is { Varies: true } trips
        ? problem with { Travel = new LeastTravel(trips), RoadChanges = [], SlowHours = [] }
        : problem;
}
