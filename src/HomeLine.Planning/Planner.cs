using HomeLine.Planning.Answers;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning;

/// <summary>How long and with which chance to search. Same problem and options, same plan.</summary>
/// <param name="Seed">Seed of the search.</param>
/// <param name="Iterations">Ruin-and-recreate rounds; the only thing that bounds the search besides cancellation.</param>
public sealed record PlanOptions(ulong Seed = 1, int Iterations = 20_000);

/// <summary>Where a running search stands.</summary>
/// <param name="Iteration">Rounds done.</param>
/// <param name="Iterations">Rounds asked for.</param>
/// <param name="Best">Score of the best plan so far.</param>
/// <param name="Visits">Visits of the best plan so far.</param>
/// <param name="UnmetTasks">Tasks the best plan leaves unmet.</param>
public sealed record PlanProgress(int Iteration, int Iterations, PlanScore Best, int Visits, int UnmetTasks);

/// <summary>The three questions this room answers: plan a week, where could an urgent visit go, and (later) mend a broken day.</summary>
public static class Planner
{
    /// <summary>Plans the problem. Anytime: on cancellation the best plan so far is returned, never nothing.</summary>
    public static WeekPlan Plan(
        WeekProblem problem,
        PlanOptions options,
        IProgress<PlanProgress>? progress = null,
        CancellationToken cancel = default) => throw new NotImplementedException();

    /// <summary>Finds workable answers to an urgent need in the published plan, moving as few told families as it can.</summary>
    /// <exception cref="ArgumentException">The problem has no published plan, or names unknown tasks or visits.</exception>
    public static UrgentAnswers Answer(WeekProblem problem, UrgentNeed need) => throw new NotImplementedException();
}
