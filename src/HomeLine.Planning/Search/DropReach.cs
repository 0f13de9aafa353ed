using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Whether a specimen drawn at a home can reach a drop point in time, taken there directly after the visit.</summary>
internal sealed class DropReach(WeekProblem problem)
{
    private readonly TripTimes _trips = TripTimes.Of(problem);

    /// <summary>Who drives there herself charts first.</summary>
    private readonly int _before = problem.Rules.HandInMinutes is null ? 0 : problem.Rules.DocumentationMinutes;

    /// <summary>
    /// Latest start of a visit on a day with which a drop point is reached in time; -1 when there is none. Where roads change with the hour a start before it may
    /// be too early, see <see cref="Holds"/>.
    /// </summary>
    /// <param name="place">Place of the home.</param>
    /// <param name="most">Most minutes from start to drop; <see cref="int.MaxValue"/> for no draw.</param>
    /// <param name="minutes">Minutes of the visit.</param>
    /// <param name="day">Day index.</param>
    public int Latest(int place, int most, int minutes, int day)
    {
        if (most == int.MaxValue) return int.MaxValue;
        int latest = -1;
        foreach (DropPoint drop in problem.DropPoints)
        {
            if (minutes + _before + _trips.Least(place, drop.Place) > most) continue;
            foreach (int cutoff in drop.Cutoffs)
            {
                if (CompiledWeek.DayOf(cutoff) == day) latest = Math.Max(latest, cutoff - minutes - _before - _trips.Reaching(place, drop.Place, cutoff));
            }
        }

        return latest;
    }

    /// <summary>Whether a start is in time for some drop point.</summary>
    public bool Holds(int place, int most, int minutes, int start)
    {
        if (most == int.MaxValue) return true;
        int ready = start + minutes + _before, day = CompiledWeek.DayOf(start);
        foreach (DropPoint drop in problem.DropPoints)
        {
            int there = ready + _trips.Leaving(place, drop.Place, ready);
            if (there - start > most) continue;
            foreach (int cutoff in drop.Cutoffs)
            {
                if (CompiledWeek.DayOf(cutoff) == day && there <= cutoff) return true;
            }
        }

        return false;
    }
}
