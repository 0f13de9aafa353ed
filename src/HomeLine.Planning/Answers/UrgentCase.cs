using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>An urgent need laid out: the care of the new visit, the visits it replaces, the plan without them, and when it is due.</summary>
internal sealed class UrgentCase
{
    public UrgentCase(StandingTable table, UrgentNeed need, ImmutableArray<CareTask> newTasks)
    {
        Table = table;
        NewTasks = newTasks;
        var tasks = newTasks.ToDictionary(t => t.Id, StringComparer.Ordinal);
        RefuseUnknown(need, tasks);
        PatientIndex = table.PatientIndex[need.Patient];
        Patient = Problem.Patients[PatientIndex];
        Urgent = [.. need.Tasks.Select(t => Find(t, tasks)!)];
        Replaced = [.. Enumerable.Range(0, table.Visits.Length).Where(v => IsReplaced(table.Visits[v], need))];
        Care =
        [
            .. need.Tasks.Concat(Replaced.SelectMany(v => table.Visits[v].Was.Tasks)).Distinct().Select(t => Find(t, tasks)).OfType<CareTask>()
                .OrderBy(t => t.Id, StringComparer.Ordinal),
        ];
        Staying = new StandingState(table.Base);
        foreach (int visit in Replaced) Staying.TakeOut(visit);
        Target = Urgent.Min(t => t.TargetBy ?? (t.LateFrom - 1L));
        LateFrom = Urgent.Min(t => t.LateFrom);
        Visit = new StandingVisit(table, NewVisit(0), Care, isFixed: false) { Ties = TiesOf(tasks) };
        DrawLimits = new DrawLimit(Problem, Visit);
    }

    public StandingTable Table { get; }

    public WeekProblem Problem => Table.Problem;

    public PatientHome Patient { get; }

    public int PatientIndex { get; }

    /// <summary>The tasks that made it urgent.</summary>
    public ImmutableArray<CareTask> Urgent { get; }

    /// <summary>All tasks of the new visit.</summary>
    public ImmutableArray<CareTask> Care { get; }

    /// <summary>Tasks the problem does not know yet.</summary>
    public ImmutableArray<CareTask> NewTasks { get; }

    /// <summary>The published visits made unnecessary.</summary>
    public ImmutableArray<int> Replaced { get; }

    /// <summary>The published plan without the replaced visits.</summary>
    public StandingState Staying { get; }

    /// <summary>The new visit, not yet given to a nurse.</summary>
    public StandingVisit Visit { get; }

    /// <summary>How late the new visit may start so that its specimen arrives.</summary>
    public DrawLimit DrawLimits { get; }

    /// <summary>Last start that meets the target.</summary>
    public long Target { get; }

    /// <summary>First start that is late.</summary>
    public int LateFrom { get; }

    /// <summary>The first start at or after an arrival that patient, care, chains and courier allow; -1 when there is none that day.</summary>
    public int StartAfter(int arrival, int minutes)
    {
        int start = Visit.StartAfter(arrival);
        return start < 0 || !DrawLimits.Holds(start, minutes) || !PushTrial.TiesHold(Staying, Visit, start) ? -1 : start;
    }

    /// <summary>The new visit with a nurse, not yet timed.</summary>
    public PlannedVisit NewVisit(int nurse, int second = -1) => new()
    {
        Id = NewName(),
        Patient = Patient.Id,
        Nurse = Problem.Nurses[nurse].Id,
        Second = second < 0 ? null : Problem.Nurses[second].Id,
        Start = 0,
        Minutes = Visit is null ? 0 : Table.MinutesOf(Visit, nurse),
        Tasks = [.. Care.Select(t => t.Id)],
    };

    /// <summary>Whether the patient keeps a visit on a day beside which this one may not stand: only a visit for safety alone may.</summary>
    public bool HasVisitOn(int day) => !Visit.SafetyOnly && Table.OfPatient[PatientIndex].Any(v =>
        Staying.Nurse[v] >= 0 && !Table.Visits[v].SafetyOnly && Search.CompiledWeek.DayOf(Staying.Start[v]) == day);

    private string NewName()
    {
        string name = "urgent " + Urgent[0].Id;
        for (int n = 2; Table.VisitIndex.ContainsKey(name); n++) name = $"urgent {Urgent[0].Id} ({n})";
        return name;
    }

    private CareTask? Find(string task, Dictionary<string, CareTask> news) =>
        news.TryGetValue(task, out CareTask? found) || Table.Tasks.TryGetValue(task, out found) ? found : null;

    private ChainTie[] TiesOf(Dictionary<string, CareTask> news)
    {
        var mine = Care.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        var ties = new List<ChainTie>();
        foreach (int v in Table.OfPatient[PatientIndex].Where(v => Staying.Nurse[v] >= 0))
        {
            foreach (CareTask other in Table.Visits[v].Care)
            {
                if (other.MinGap > 0 && other.After is { } a && mine.Contains(a)) ties.Add(new ChainTie(v, other.MinGap, other.GapInDays, false));
                ties.AddRange(Care.Where(t => t.MinGap > 0 && t.After == other.Id).Select(t => new ChainTie(v, t.MinGap, t.GapInDays, true)));
            }
        }

        return [.. ties];
    }

    /// <summary>Named as replaced, or a later visit that holds care of the urgent visit.</summary>
    private static bool IsReplaced(StandingVisit visit, UrgentNeed need) =>
        !visit.Fixed && (need.ReplacesVisits.Contains(visit.Was.Id) || (visit.Was.Patient == need.Patient && visit.Was.Tasks.Any(need.Tasks.Contains)));

    private void RefuseUnknown(UrgentNeed need, Dictionary<string, CareTask> news)
    {
        if (!Table.PatientIndex.ContainsKey(need.Patient)) throw new ArgumentException($"Patient {need.Patient} is not in the problem.", nameof(need));
        if (need.Tasks.IsDefaultOrEmpty) throw new ArgumentException("An urgent need has at least one task.", nameof(need));
        if (need.Tasks.FirstOrDefault(t => Find(t, news)?.Patient != need.Patient) is { } task)
            throw new ArgumentException($"Task {task} is not a task of {need.Patient} in the problem.", nameof(need));
        if (need.ReplacesVisits.FirstOrDefault(r => !Table.VisitIndex.ContainsKey(r)) is { } visit)
            throw new ArgumentException($"Visit {visit} is not in the published plan.", nameof(need));
    }
}
