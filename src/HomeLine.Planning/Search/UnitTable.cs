using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Units by index: what is inserted and removed as one.</summary>
internal sealed class UnitTable
{
    private readonly AbleSet _able;

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
        DaysOf = new int[Count][];
        Choices = new int[Count];
        _able = new AbleSet(Count, week.Routes.Count);
        var skills = new SkillMasks(week.Problem);
        for (int u = 0; u < Count; u++) Fill(u, skills);
        ILookup<int, int> byPatient = Enumerable.Range(0, Count).ToLookup(u => Patient[u]);
        OfPatient = [.. Enumerable.Range(0, week.PatientCount).Select(p => byPatient[p].ToArray())];
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

    /// <summary>By unit: the table days on which it may start.</summary>
    public int[][] DaysOf { get; }

    /// <summary>By patient: its units.</summary>
    public int[][] OfPatient { get; }

    /// <summary>Number of able routes: the fewer, the tighter.</summary>
    public int[] Choices { get; }

    /// <summary>Skills, licence, home and an allowed start on that day.</summary>
    public bool Able(int unit, int route) => _able.Has(unit, route);

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

    private void Fill(int u, SkillMasks skills)
    {
        for (int day = 0; day < Week.Days; day++) StartSpans[(u * Week.Days) + day] = FixedVisit[u] >= 0 ? [] : Spans(u, day + Week.FirstDay);
        DaysOf[u] = [.. Enumerable.Range(0, Week.Days).Where(d => StartSpans[(u * Week.Days) + d].Length > 0)];
        if (DaysOf[u].Length == 0) return;
        string state = Week.Problem.Patients[Patient[u]].State;
        ulong[] asked = skills.Of(Tasks[u].SelectMany(t => Task(t).Skills));
        for (int n = 0; n < Week.NurseCount; n++)
        {
            if (!Week.People.Welcome(Patient[u], n) || !skills.Has(n, asked)) continue;
            int able = Math.Min(LastLicensed(Week.Problem.Nurses[n], state), LastSignedOff(Week.Problem.Nurses[n], u));
            foreach (int day in DaysOf[u])
            {
                int r = Week.Routes.Find(n, day);
                if (r < 0 || !Week.Routes.Open[r] || able < day + Week.FirstDay) continue;
                _able.Put(u, r);
                Choices[u]++;
            }
        }
    }

    private int LastSignedOff(Nurse nurse, int u) =>
        nurse.SkillEnds.IsEmpty ? int.MaxValue : Tasks[u].SelectMany(t => Task(t).Skills).Select(nurse.SkilledThrough).DefaultIfEmpty(int.MaxValue).Min();

    private static int LastLicensed(Nurse nurse, string state)
    {
        int last = int.MinValue;
        foreach (Licence licence in nurse.Licences)
        {
            if (licence.State == state) last = Math.Max(last, licence.LastDay);
        }

        return last;
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
