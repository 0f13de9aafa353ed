using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Travel minutes between the homes of nurses and patients, in one block: nurses first, then patients.</summary>
internal sealed class Roads
{
    private readonly int[] _minutes;
    private readonly int[] _into;
    private readonly int _nurses;

    /// <param name="problem">Whose homes they are.</param>
    /// <param name="closures">Times of other roads: of each trip the longest minutes count, so that it works whenever it is left for.</param>
    public Roads(WeekProblem problem, IReadOnlyCollection<RoadChange>? closures = null)
    {
        _nurses = problem.Nurses.Length;
        int[] places = [.. problem.Nurses.Select(n => n.Home), .. problem.Patients.Select(p => p.Place)];
        Count = places.Length;
        _minutes = new int[Count * Count];
        for (int a = 0; a < Count; a++)
            for (int b = 0; b < Count; b++) _minutes[(a * Count) + b] = Longest(problem.Travel, closures ?? [], places[a], places[b]);
        _into = IsSymmetric() ? _minutes : Turned();
    }

    public int Count { get; }

    public static int OfNurse(int nurse) => nurse;

    public int OfPatient(int patient) => _nurses + patient;

    /// <summary>Minutes into a place from another one; those into one place lie side by side.</summary>
    public int Into(int to, int from) => _into[(to * Count) + from];

    public int Minutes(int from, int to) => _minutes[(from * Count) + to];

    private static int Longest(ITravelTimes usual, IReadOnlyCollection<RoadChange> closures, int from, int to)
    {
        int minutes = usual.Minutes(from, to);
        foreach (RoadChange closure in closures) minutes = Math.Max(minutes, closure.Travel.Minutes(from, to));
        return minutes;
    }

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
