using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Tasks by index.</summary>
internal sealed class TaskTable
{
    public TaskTable(CompiledWeek week)
    {
        WeekProblem problem = week.Problem;
        Count = problem.Tasks.Length;
        LateFrom = [.. problem.Tasks.Select(t => t.LateFrom)];
        Weight = [.. problem.Tasks.Select(t => t.Weight)];
        Critical = [.. problem.Tasks.Select(t => t.Critical)];
        TargetBy = [.. problem.Tasks.Select(t => t.TargetBy ?? int.MaxValue)];
        Safety = [.. problem.Tasks.Select(t => t.Safety)];
        Before = [.. problem.Tasks.Select(t => t.After is { } a ? week.TaskIndex.GetValueOrDefault(a, -1) : -1)];
        MinGap = [.. problem.Tasks.Select(t => t.MinGap)];
        MaxGap = [.. problem.Tasks.Select(t => t.MaxGap)];
        GapInDays = [.. problem.Tasks.Select(t => t.GapInDays)];
        ILookup<int, int> followers = Enumerable.Range(0, Count).ToLookup(t => Before[t]);
        Next = [.. Enumerable.Range(0, Count).Select(t => followers[t].ToArray())];
        bool[] byMinutes = [.. problem.Tasks.Select((t, i) => Before[i] >= 0 && !t.GapInDays && (t.MinGap > 0 || t.MaxGap < int.MaxValue))];
        TiedByMinutes = [.. byMinutes.Select((tied, t) => tied || Next[t].Any(n => byMinutes[n]))];
        LastDayOnTime = [.. problem.Tasks.Select(t => t.LateFrom == int.MaxValue
            ? int.MinValue
            : (int)Math.Floor((t.LateFrom - 1L) / 1440.0) - week.FirstDay)];
        UsualDay = [.. problem.Tasks.Select(t => t.UsualDay is { } d ? d - week.FirstDay : int.MinValue)];
        Wished = [.. problem.Tasks.Select(t => t.LeftOutDuty is not null)];
        UnmetPoints = [.. problem.Tasks.Select(t => t.LeftOutDuty ?? Cost.LateCost.Unmet(problem, t))];
        double critical = Cost.Blend.CriticalPrice(problem.Rules, UnmetPoints.Where((_, t) => !Critical[t]).Sum());
        CriticalPrice = critical;
        PointPrice = [.. Critical.Select((c, t) => Wished[t] ? Cost.Blend.Duty : c ? critical : Cost.Blend.Risk)];
    }

    public int Count { get; }

    public int[] LateFrom { get; }

    public int[] Weight { get; }

    public bool[] Critical { get; }

    public int[] TargetBy { get; }

    public bool[] Safety { get; }

    /// <summary>The task before in the chain, or -1.</summary>
    public int[] Before { get; }

    /// <summary>The tasks that follow in the chain.</summary>
    public int[][] Next { get; }

    public int[] MinGap { get; }

    public int[] MaxGap { get; }

    public bool[] GapInDays { get; }

    /// <summary>Part of a chain counted in minutes, before or after.</summary>
    public bool[] TiedByMinutes { get; }

    /// <summary>Table day of the last minute on time; <see cref="int.MinValue"/> when it is never late.</summary>
    public int[] LastDayOnTime { get; }

    /// <summary>Table day of the habit; <see cref="int.MinValue"/> for none.</summary>
    public int[] UsualDay { get; }

    /// <summary>A wish and no need: left out it costs duties.</summary>
    public bool[] Wished { get; }

    /// <summary>Points of being left out, of the tier the task belongs to.</summary>
    public long[] UnmetPoints { get; }

    /// <summary>Price of a point of lateness, or of a wish left out, in the blend, by task.</summary>
    public double[] PointPrice { get; }

    /// <summary>Price of a point of critical lateness in the blend.</summary>
    public double CriticalPrice { get; }
}
