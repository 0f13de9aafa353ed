using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Units by index: what is inserted and removed as one.</summary>
internal sealed class UnitTable
{
    public UnitTable(CompiledWeek week)
    {
        Week = week;
        Tasks = [.. Group(week)];
        Count = Tasks.Length;
        FixedVisit = [.. Enumerable.Range(0, Count).Select(u => u < week.FixedVisits.Length ? u : -1)];
        Patient = [.. Tasks.Select(ts => week.PatientIndex[Task(ts[0]).Patient])];
        Setup = [.. Tasks.Select(ts => ts.Max(t => Task(t).SetupMinutes))];
        Work = [.. Tasks.Select(ts => ts.Sum(t => Task(t).WorkMinutes))];
        DrawToDrop = [.. Tasks.Select(ts => ts.Min(t => Task(t).DrawToDropMinutes ?? int.MaxValue))];
        Chained = [.. Tasks.Select(ts => ts.Any(t => week.Tasks.Before[t] >= 0 || week.Tasks.Next[t].Length > 0))];
        HeldBack = [.. Tasks.Select(ts => ts.Any(t => week.Tasks.Before[t] >= 0 && week.Tasks.MinGap[t] > 0 && !week.Tasks.GapInDays[t]))];
        OfTask = new int[week.Tasks.Count];
        for (int u = 0; u < Count; u++)
            foreach (int t in Tasks[u]) OfTask[t] = u;
        StartSpans = new Span[Count * week.Days][];
        Able = new bool[Count * week.Routes.Count];
        Choices = new int[Count];
        for (int u = 0; u < Count; u++) Fill(u);
    }

    private CompiledWeek Week { get; }

    public int Count { get; }

    public int[][] Tasks { get; }

    /// <summary>Index of the fixed visit that is this unit, or -1.</summary>
    public int[] FixedVisit { get; }

    public int[] Patient { get; }

    public int[] Setup { get; }

    public int[] Work { get; }

    /// <summary>Most minutes from start to drop; <see cref="int.MaxValue"/> for none.</summary>
    public int[] DrawToDrop { get; }

    public bool[] Chained { get; }

    /// <summary>Whether a start elsewhere, by the minute, holds it back.</summary>
    public bool[] HeldBack { get; }

    public int[] OfTask { get; }

    /// <summary>By unit and table day: allowed starts, ascending and disjoint.</summary>
    public Span[][] StartSpans { get; }

    /// <summary>By unit and route: skills, licence, home and an allowed start on that day.</summary>
    public bool[] Able { get; }

    /// <summary>Number of able routes: the fewer, the tighter.</summary>
    public int[] Choices { get; }

    private CareTask Task(int t) => Week.Problem.Tasks[t];

    /// <summary>Fixed visits come first, so their index is the unit's.</summary>
    private static IEnumerable<int[]> Group(CompiledWeek week)
    {
        var done = new HashSet<int>();
        foreach (PlannedVisit visit in week.FixedVisits)
        {
            int[] tasks = [.. visit.Tasks.Select(t => week.TaskIndex[t]).Order()];
            done.UnionWith(tasks);
            yield return tasks;
        }

        var rest = Enumerable.Range(0, week.Tasks.Count).Where(t => !done.Contains(t));
        foreach (var group in rest.GroupBy(t => GroupKey(week.Problem.Tasks[t]))) yield return [.. group];
    }

    private static (string, string) GroupKey(CareTask task) => task.Together is { } together ? (task.Patient, together) : ("", task.Id);

    private void Fill(int u)
    {
        for (int day = 0; day < Week.Days; day++) StartSpans[(u * Week.Days) + day] = FixedVisit[u] >= 0 ? [] : Spans(u, day + Week.FirstDay);
        PatientHome patient = Week.Problem.Patients[Patient[u]];
        CareTask[] care = [.. Tasks[u].Select(Task)];
        for (int r = 0; r < Week.Routes.Count; r++)
        {
            bool able = FixedVisit[u] < 0 && Week.Routes.Open[r] && StartSpans[(u * Week.Days) + Week.Routes.Day[r]].Length > 0
                && Scope.Fault(Week.Problem, patient, care, Week.Problem.Nurses[Week.Routes.Nurse[r]], Week.Routes.Day[r] + Week.FirstDay) is null;
            Able[(u * Week.Routes.Count) + r] = able;
            if (able) Choices[u]++;
        }
    }

    private Span[] Spans(int u, int day)
    {
        if (day < 0 || day >= Week.Problem.DayCount) return [];
        int from = Math.Max(day * 1440, Math.Max(Week.Problem.Now, Tasks[u].Max(t => Task(t).Opens)));
        int to = Math.Min(((day + 1) * 1440) - 1, Tasks[u].Min(t => Task(t).HardLatest));
        Span[] spans = from <= to ? [new Span(from, to)] : [];
        spans = SpanSet.Both(spans, Week.Problem.Patients[Patient[u]].StartSpans.AsSpan());
        foreach (int t in Tasks[u]) spans = SpanSet.Both(spans, Task(t).StartSpans.AsSpan());
        return spans;
    }
}
