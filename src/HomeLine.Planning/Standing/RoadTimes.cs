using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>Travel minutes between the homes of nurses and patients by the time of leaving: nurses first, then patients.</summary>
internal sealed class RoadTimes
{
    private readonly int[] _minutes;
    private readonly (int From, int To, int[] Minutes)[] _changes;
    private readonly int _count;

    public RoadTimes(WeekProblem problem, IReadOnlyCollection<RoadChange> changes)
    {
        int[] places = [.. problem.Nurses.Select(n => n.Home), .. problem.Patients.Select(p => p.Place)];
        _count = places.Length;
        _minutes = Matrix(places, problem.Travel);
        _changes = [.. changes.Select(c => (c.From, c.To, Matrix(places, c.Travel)))];
    }

    /// <summary>Minutes for a trip that is left for at a minute.</summary>
    public int Leaving(int from, int to, int leave)
    {
        foreach ((int first, int end, int[] minutes) in _changes)
        {
            if (leave >= first && leave < end) return minutes[(from * _count) + to];
        }

        return _minutes[(from * _count) + to];
    }

    /// <summary>Minutes for a trip that ends at a minute: by the time it would be left for without any change.</summary>
    public int Reaching(int from, int to, int arrive) => Leaving(from, to, arrive - _minutes[(from * _count) + to]);

    private static int[] Matrix(int[] places, ITravelTimes travel)
    {
        var minutes = new int[places.Length * places.Length];
        for (int a = 0, at = 0; a < places.Length; a++)
        {
            for (int b = 0; b < places.Length; b++) minutes[at++] = travel.Minutes(places[a], places[b]);
        }

        return minutes;
    }
}
