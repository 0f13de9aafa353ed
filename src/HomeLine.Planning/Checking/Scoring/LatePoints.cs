using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking.Scoring;

/// <summary>
/// Points of care done late or not at all. Other care: 10, 30, 60, 100 … times the weight per started day (with a step of 10).
/// Critical care: 50 times the weight per started four hours. Care left out counts as if done late after the end of a second horizon.
/// </summary>
internal static class LatePoints
{
    public static long Done(PlanningRules rules, CareTask task, long start, long lateFrom) =>
        start < lateFrom ? 0 : Points(rules, task, start - lateFrom);

    public static long Unmet(WeekProblem problem, CareTask task)
    {
        long overdue = Math.Max(0, (problem.DayCount * 1440L) - task.LateFrom);
        return Points(problem.Rules, task, overdue + ((problem.DayCount + 1) * 1440L));
    }

    private static long Points(PlanningRules rules, CareTask task, long minutesLate)
    {
        if (task.Critical) return (long)rules.CriticalStepPoints * task.Weight * ((minutesLate / rules.CriticalStepMinutes) + 1);
        long days = (minutesLate / 1440) + 1;
        return rules.LateStepPoints * (long)task.Weight * days * (days + 1) / 2;
    }
}
