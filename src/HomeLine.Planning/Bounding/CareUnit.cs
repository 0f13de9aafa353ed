using HomeLine.Planning.Checking.Scoring;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>Care that is done in one visit or not at all: a task, or tasks that belong together.</summary>
internal sealed class CareUnit
{
    private readonly WeekProblem _problem;

    public CareUnit(WeekProblem problem, int index, CareTask[] tasks, int patient)
    {
        (_problem, Index, Tasks, Patient) = (problem, index, tasks, patient);
        Setup = tasks.Max(t => t.SetupMinutes);
        Work = tasks.Sum(t => t.WorkMinutes);
        Skills = [.. tasks.SelectMany(t => t.Skills.IsDefault ? [] : t.Skills).Distinct()];
        CountsForOrders = tasks.Any(t => !t.Safety);
        Unmet = [0, 0, 0];
        foreach (CareTask task in tasks)
        {
            if (task.LeftOutDuty is { } wished) Unmet[2] += wished;
            else Unmet[task.Critical ? 0 : 1] += LatePoints.Unmet(problem, task);
        }
    }

    /// <summary>The visit that must stay and does this care; empty when it is still to be planned. Then it is done there and nowhere else.</summary>
    public Plans.PlannedVisit? Fixed { get; init; }

    public int Index { get; }

    public CareTask[] Tasks { get; }

    public int Patient { get; }

    public int Setup { get; }

    public int Work { get; }

    public string[] Skills { get; }

    /// <summary>Anything but care for safety.</summary>
    public bool CountsForOrders { get; }

    /// <summary>Whether any of it is of a kind that nurses may have a cap for.</summary>
    public bool IsOf(string kind) => Tasks.Any(t => !t.Kinds.IsDefault && t.Kinds.Contains(kind));

    /// <summary>Points of the first three tiers when it is left out.</summary>
    public long[] Unmet { get; }

    /// <summary>Points of the first three tiers at a start; what the care before in a chain adds is left aside.</summary>
    public long[] PointsAt(int start)
    {
        long[] points = [0, 0, 0];
        foreach (CareTask task in Tasks)
        {
            points[task.Critical ? 0 : 1] += LatePoints.Done(_problem.Rules, task, start, task.LateFrom);
            if (task.TargetBy is { } target && start > target) points[2] += task.Weight;
        }

        return points;
    }

    /// <summary>Minutes of a day from which on the points are others.</summary>
    public IEnumerable<int> Edges(int day)
    {
        long first = day * 1440L, end = first + 1440;
        foreach (CareTask task in Tasks)
        {
            if (task.TargetBy is { } target && target + 1L > first && target + 1L < end) yield return target + 1;
            long step = task.Critical ? _problem.Rules.CriticalStepMinutes : 1440, edge = task.LateFrom;
            if (edge < first) edge += (first - edge) / step * step;
            for (; edge < end; edge += step)
            {
                if (edge > first) yield return (int)edge;
            }
        }
    }

    /// <summary>Days of life given away on a day, and habits broken.</summary>
    public long UnusedLife(int day)
    {
        long life = 0;
        foreach (CareTask task in Tasks)
        {
            if (task.LateFrom != int.MaxValue) life += Math.Max(0, (int)Math.Floor((task.LateFrom - 1L) / 1440.0) - day);
            if (task.UsualDay is { } usual && usual != day) life++;
        }

        return life;
    }
}
