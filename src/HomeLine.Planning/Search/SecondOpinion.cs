using System.Diagnostics;
using System.Numerics;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;

namespace HomeLine.Planning.Search;

/// <summary>Debug builds only: now and then the checker, which shares no code with the search, counts the plan the search believes it has.</summary>
internal static class SecondOpinion
{
    private const int EveryRounds = 4_096, LargestChecked = 3_000;

    /// <exception cref="InvalidOperationException">The plan breaks a rule, or its score is not what the increments add up to.</exception>
    [Conditional("DEBUG")]
    public static void Compare(CompiledWeek week, WeekState state, PlanScore believed, int round)
    {
        if ((!BitOperations.IsPow2(round) && round % EveryRounds != 0) || week.Units.Count > LargestChecked) return;
        var visits = new PlanWriting(week).Visits(state);
        var done = visits.SelectMany(v => v.Tasks).ToHashSet(StringComparer.Ordinal);
        var plan = new WeekPlan(visits, [.. week.Problem.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))], believed);
        CheckReport report = Checker.Check(week.Problem, plan);
        if (week.TriesManyWays ? report.Score > believed : report.Score != believed) throw new InvalidOperationException($"Round {round}: the search counts {believed}, the checker {report.Score}.");
        if (!report.Accepted) throw new InvalidOperationException($"Round {round}: {report.Findings[0].Reason.Sentence}");
    }
}
