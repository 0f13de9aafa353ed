namespace HomeLine.Planning.Problem;

/// <summary>Travel minutes between some places in one block, numbered as listed.</summary>
internal sealed class TravelMatrix : ITravelTimes
{
    private readonly int[] _minutes;
    private readonly int _count;

    public TravelMatrix(int[] places, Func<int, int, int> minutes)
    {
        _count = places.Length;
        _minutes = new int[_count * _count];
        for (int a = 0, at = 0; a < _count; a++)
        {
            for (int b = 0; b < _count; b++) _minutes[at++] = minutes(places[a], places[b]);
        }
    }

    public int Minutes(int from, int to) => _minutes[(from * _count) + to];

    /// <summary>The trips of a problem between the homes of nurses and patients and the drop points, in this order.</summary>
    public static TripTimes Trips(WeekProblem problem, IReadOnlyCollection<RoadChange> changes)
    {
        int[] places = Places(problem);
        return new TripTimes(new TravelMatrix(places, problem.Travel.Minutes), [.. changes.Select(c => c with { Travel = new TravelMatrix(places, c.Travel.Minutes) })], problem.SlowHours);
    }

    /// <summary>Places of the homes of nurses, then patients, then of the drop points.</summary>
    public static int[] Places(WeekProblem problem) => [.. problem.Nurses.Select(n => n.Home), .. problem.Patients.Select(p => p.Place), .. problem.DropPoints.Select(d => d.Place)];
}
