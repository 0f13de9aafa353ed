using System.Collections.Immutable;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>
/// A published plan made ready for urgent needs: looked up and checked once, so that each need that comes up is answered in a few milliseconds.
/// Safe to ask from several threads. Make a new one when the plan changes, and as time goes on: what is about to start is fixed as of the problem's now.
/// </summary>
public sealed class ReadyWeek
{
    private readonly StandingTable _table;
    private readonly PlanScore _score;

    /// <summary>Looks the plan up and checks it.</summary>
    /// <exception cref="ArgumentException">The problem contradicts itself, has no published plan, or the plan names people who are not in it.</exception>
    public ReadyWeek(WeekProblem problem)
    {
        ProblemFaults.Refuse(problem);
        WeekPlan published = problem.Published is { Visits.IsDefault: false } plan
            ? plan
            : throw new ArgumentException("There is no published plan to answer in.", nameof(problem));
        _table = new StandingTable(problem, published, problem.RoadChanges);
        _score = Checker.Check(problem, published).Score;
    }

    /// <summary>The ranked answers to one urgent need that no other answer beats on every count.</summary>
    /// <param name="need">Whose, which care, and the visits it makes unnecessary.</param>
    /// <param name="newTasks">Care that came up since and is not in the problem.</param>
    /// <param name="beaten">How many answers that are beaten on every count to write out as well.</param>
    /// <exception cref="ArgumentException">The need names tasks or visits nobody knows.</exception>
    public UrgentAnswers Options(UrgentNeed need, ImmutableArray<CareTask> newTasks = default, int beaten = 0) =>
        new UrgentSearch(new UrgentCase(_table, need, newTasks.IsDefault ? [] : newTasks), _score, beaten).Answers();
}
