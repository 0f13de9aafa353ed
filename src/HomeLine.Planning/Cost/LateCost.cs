using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Cost;

/// <summary>The search's own points of late and unmet care; the checker has its own, and tests compare the two.</summary>
internal static class LateCost
{
    /// <summary>Points of care that starts <paramref name="late"/> minutes after its first late minute (0 or more).</summary>
    public static long Late(PlanningRules rules, bool critical, int weight, long late)
    {
        if (critical)
        {
            long steps = 1 + (late / rules.CriticalStepMinutes);
            return steps * rules.CriticalStepPoints * weight;
        }

        long day = 1 + (late / 1440);
        return (day * (day + 1) / 2) * rules.LateStepPoints * weight;
    }

    /// <summary>Points of care left out: as if it were done a horizon and a day after the end of the horizon.</summary>
    public static long Unmet(WeekProblem problem, CareTask task)
    {
        long end = 1440L * problem.DayCount;
        return Late(problem.Rules, task.Critical, task.Weight, Math.Max(end - task.LateFrom, 0) + end + 1440);
    }
}
