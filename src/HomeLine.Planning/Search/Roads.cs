using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// Travel minutes between the homes of nurses and patients and the drop points, in one block and this order. Where roads or speeds change with the hour, the block has the
/// fewest minutes of any hour, for bounds and neighbourhoods; what is planned is timed by <see cref="Leaving"/> and <see cref="Reaching"/>.
/// </summary>
internal sealed class Roads
{
    private readonly int[] _minutes;
    private readonly int[] _into;
    private readonly int _nurses;
    private readonly int _homes;
    private readonly TripTimes _trips;
    private readonly int[][] _slowEnds;

    public Roads(WeekProblem problem, int firstDay, int days)
    {
        _nurses = problem.Nurses.Length;
        int[] places = TravelMatrix.Places(problem);
        _trips = TripTimes.Of(problem);
        Varies = _trips.Varies;
        if (Varies) _trips = TravelMatrix.Trips(problem, problem.RoadChanges);
        ILookup<int, int> ends = problem.SlowHours.ToLookup(s => CompiledWeek.DayOf(s.To), s => s.To);
        _slowEnds = [.. Enumerable.Range(firstDay, days).Select(d => ends[d].ToArray())];
        _homes = _nurses + problem.Patients.Length;
        Count = _homes + problem.DropPoints.Length;
        _minutes = new int[Count * Count];
        for (int a = 0; a < Count; a++)
            for (int b = 0; b < Count; b++) _minutes[(a * Count) + b] = Varies ? _trips.Least(a, b) : problem.Travel.Minutes(places[a], places[b]);
        _into = (problem.Travel is MapTravel && !Varies) || IsSymmetric() ? _minutes : Turned();
    }

    public int Count { get; }

    /// <summary>Whether any trip takes other minutes at other hours.</summary>
    public bool Varies { get; }

    public static int OfNurse(int nurse) => nurse;

    public int OfPatient(int patient) => _nurses + patient;

    public int OfDrop(int drop) => _homes + drop;

    /// <summary>Fewest minutes into a place from another one; those into one place lie side by side.</summary>
    public int Into(int to, int from) => _into[(to * Count) + from];

    /// <summary>Fewest minutes of a trip.</summary>
    public int Minutes(int from, int to) => _minutes[(from * Count) + to];

    /// <summary>Minutes of a trip that is left for at a minute.</summary>
    public int Leaving(int from, int to, int leave) => Varies ? _trips.Leaving(from, to, leave) : Minutes(from, to);

    /// <summary>Minutes before an arrival at which one has to leave at the latest.</summary>
    public int Reaching(int from, int to, int arrive) => Varies ? _trips.Reaching(from, to, arrive) : Minutes(from, to);

    /// <summary>When slow hours end on a day of the tables.</summary>
    public int[] SlowEnds(int day) => _slowEnds[day];

    private bool IsSymmetric()
    {
        for (int a = 0; a < Count; a++)
        {
            for (int b = 0; b < a; b++)
            {
                if (_minutes[(a * Count) + b] != _minutes[(b * Count) + a]) return false;
            }
        }

        return true;
    }

    private int[] Turned()
    {
        var turned = new int[_minutes.Length];
        for (int a = 0; a < Count; a++)
        {
            for (int b = 0; b < Count; b++) turned[(b * Count) + a] = _minutes[(a * Count) + b];
        }

        return turned;
    }
}
