using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>Travel minutes between the homes of nurses and patients and the drop points, in this order, by the time of leaving.</summary>
internal sealed class RoadTimes
{
    private readonly ITravelTimes _usual;
    private readonly TripTimes _trips;
    private readonly bool _varies;

    public RoadTimes(WeekProblem problem, IReadOnlyCollection<RoadChange> changes)
    {
        int[] places = TravelMatrix.Places(problem);
        _usual = Between(places, problem.Travel);
        _trips = new TripTimes(_usual, [.. changes.Select(c => c with { Travel = Between(places, c.Travel) })], problem.SlowHours);
        _varies = _trips.Varies;
    }

    private static ITravelTimes Between(int[] places, ITravelTimes travel) => travel is MapTravel map ? new MapTrips(places, map) : new TripTable(places, travel);

    /// <summary>Minutes for a trip that is left for at a minute.</summary>
    public int Leaving(int from, int to, int leave) => _varies ? _trips.Leaving(from, to, leave) : _usual.Minutes(from, to);

    /// <summary>Minutes before an arrival at which one has to leave at the latest.</summary>
    public int Reaching(int from, int to, int arrive) => _varies ? _trips.Reaching(from, to, arrive) : _usual.Minutes(from, to);
}
