using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>Whether a visit with a draw starts so that the specimen reaches a drop point in time.</summary>
internal sealed class DrawLimit(WeekProblem problem, StandingVisit visit)
{
    private readonly DropReach _drops = new(problem);

    /// <summary>Whether a start allows it; always without a draw.</summary>
    public bool Holds(int start, int minutes) => _drops.Holds(visit.Home.Place, visit.DrawToDrop, minutes, start);
}
