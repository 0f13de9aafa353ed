using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>Travel minutes between the homes of nurses and patients by the time of leaving: nurses first, then patients.</summary>
internal sealed class RoadTimes
{
    private readonly TripTable _minutes;
    private readonly (int From, int To, TripTable Minutes)[] _changes;

    public RoadTimes(WeekProblem problem, IReadOnlyCollection<RoadChange> changes)
    {
        int[] places = [.. problem.Nurses.Select(n => n.Home), .. problem.Patients.Select(p => p.Place)];
        _minutes = new TripTable(places, problem.Travel);
        _changes = [.. changes.Select(c => (c.From, c.To, new TripTable(places, c.Travel)))];
    }

    /// <summary>Minutes for a trip that is left for at a minute.</summary>
    public int Leaving(int from, int to, int leave)
    {
        foreach ((int first, int end, TripTable minutes) in _changes)
        {
            if (leave >= first && leave < end) return minutes.Between(from, to);
        }

        return _minutes.Between(from, to);
    }

    /// <summary>Minutes for a trip that ends at a minute: by the time it would be left for without any change.</summary>
    public int Reaching(int from, int to, int arrive) => Leaving(from, to, arrive - _minutes.Between(from, to));
}
