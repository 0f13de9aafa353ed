using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>
/// Minutes of a trip by when it is left for: the usual roads, those that hold for a while instead, and the hours in which everybody drives slower. Within a day
/// leaving later never arrives earlier: who would be there sooner by waiting until a road opens again waits where she is, and that counts as part of the trip.
/// </summary>
public sealed class TripTimes
{
    private readonly ITravelTimes _usual;
    private readonly ImmutableArray<RoadChange> _changes;
    private readonly DrivingPace _pace;

    /// <summary>The minutes at which other roads begin to hold, ascending.</summary>
    private readonly long[] _turns;

    /// <param name="usual">Travel times where nothing else is said.</param>
    /// <param name="changes">Roads that hold for a while; where two overlap, the first counts.</param>
    /// <param name="slow">Slow times that do not overlap.</param>
    public TripTimes(ITravelTimes usual, ImmutableArray<RoadChange> changes, ImmutableArray<SlowHours> slow)
    {
        (_usual, _changes, _pace) = (usual, changes.IsDefault ? [] : changes, new DrivingPace(slow));
        _turns = [.. _changes.SelectMany(c => new long[] { c.From, c.To }).Distinct().Order()];
    }

    /// <summary>Whether any trip takes other minutes at other hours.</summary>
    public bool Varies => _turns.Length > 0 || !_pace.IsSteady;

    /// <summary>The trips of a problem.</summary>
    public static TripTimes Of(WeekProblem problem) => new(problem.Travel, problem.RoadChanges, problem.SlowHours);

    /// <summary>Whole minutes of a trip that is left for at a minute, parking included; <see cref="ITravelTimes.Unreachable"/> when there is no way that day.</summary>
    /// <param name="from">Index of the place left.</param>
    /// <param name="to">Index of the place reached.</param>
    /// <param name="leave">Plan minute of leaving.</param>
    public int Leaving(int from, int to, long leave)
    {
        if (!Varies) return _usual.Minutes(from, to);
        long best = Taken(from, to, leave, leave);
        foreach (long turn in _turns)
        {
            if (turn > leave && DayOf(turn) == DayOf(leave)) best = Math.Min(best, Taken(from, to, leave, turn));
        }

        return (int)best;
    }

    /// <summary>Whole minutes before an arrival at which one has to leave at the latest; <see cref="ITravelTimes.Unreachable"/> when there is no way.</summary>
    /// <param name="from">Index of the place left.</param>
    /// <param name="to">Index of the place reached.</param>
    /// <param name="arrive">Plan minute by which to be there.</param>
    public int Reaching(int from, int to, long arrive)
    {
        if (!Varies) return _usual.Minutes(from, to);
        for (int i = _turns.Length; i >= 0; i--)
        {
            long begins = i == 0 ? long.MinValue : _turns[i - 1];
            if (begins > arrive) continue;
            int minutes = RoadsAt(begins).Minutes(from, to);
            if (minutes >= ITravelTimes.Unreachable) continue;
            long leave = _pace.Depart(arrive, minutes);
            if (i < _turns.Length) leave = Math.Min(leave, _turns[i] - 1);
            if (leave >= begins) return (int)Math.Min(arrive - leave, ITravelTimes.Unreachable);
        }

        return ITravelTimes.Unreachable;
    }

    /// <summary>The fewest minutes a trip takes at any hour: a lower bound of both.</summary>
    /// <param name="from">Index of the place left.</param>
    /// <param name="to">Index of the place reached.</param>
    public int Least(int from, int to)
    {
        int least = _usual.Minutes(from, to);
        foreach (RoadChange change in _changes) least = Math.Min(least, change.Travel.Minutes(from, to));
        return least;
    }

    /// <summary>Minutes until there, for whoever sets out at a minute after standing still since she left.</summary>
    private long Taken(int from, int to, long leave, long setOut)
    {
        int minutes = RoadsAt(setOut).Minutes(from, to);
        return minutes >= ITravelTimes.Unreachable ? ITravelTimes.Unreachable : Math.Min(_pace.Arrive(setOut, minutes) - leave, ITravelTimes.Unreachable);
    }

    private ITravelTimes RoadsAt(long minute)
    {
        foreach (RoadChange change in _changes)
        {
            if (minute >= change.From && minute < change.To) return change.Travel;
        }

        return _usual;
    }

    private static long DayOf(long minute) => minute >= 0 ? minute / 1440 : ((minute + 1) / 1440) - 1;
}
