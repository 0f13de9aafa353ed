using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>How late a visit with a draw may start so that the specimen reaches a drop point in time.</summary>
internal sealed class DrawLimit(WeekProblem problem, StandingVisit visit)
{
    /// <summary>Latest start on the day of a minute; -1 when no drop point can be reached that day, no limit without a draw.</summary>
    public int Latest(int on, int minutes)
    {
        if (visit.DrawToDrop == int.MaxValue) return int.MaxValue;
        int latest = -1, day = CompiledWeek.DayOf(on);
        foreach (DropPoint drop in problem.DropPoints)
        {
            int there = minutes + problem.Travel.Minutes(visit.Home.Place, drop.Place);
            if (there > visit.DrawToDrop) continue;
            foreach (int cutoff in drop.Cutoffs)
            {
                if (CompiledWeek.DayOf(cutoff) == day) latest = Math.Max(latest, cutoff - there);
            }
        }

        return latest;
    }
}
