using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Answers;

/// <summary>An urgent need laid out: the care of the new visit, the visits it replaces, the visits that stay, and when it is due.</summary>
internal sealed class UrgentCase
{
    private readonly Dictionary<string, Nurse> _nurses;
    private readonly Dictionary<string, PatientHome> _patients;
    private readonly Dictionary<string, CareTask> _tasks;
    private readonly HashSet<string> _fixed;

    public UrgentCase(WeekProblem problem, UrgentNeed need)
    {
        ProblemFaults.Refuse(problem);
        Problem = problem;
        Published = problem.Published is { Visits.IsDefault: false } published
            ? published
            : throw new ArgumentException("There is no published plan to answer in.", nameof(problem));
        _nurses = problem.Nurses.ToDictionary(n => n.Id, StringComparer.Ordinal);
        _patients = problem.Patients.ToDictionary(p => p.Id, StringComparer.Ordinal);
        _tasks = problem.Tasks.ToDictionary(t => t.Id, StringComparer.Ordinal);
        _fixed = problem.FixedVisits().Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        RefuseUnknown(need);
        Patient = _patients[need.Patient];
        Urgent = [.. need.Tasks.Select(t => _tasks[t])];
        Replaced = [.. Published.Visits.Where(v => IsReplaced(v, need))];
        Care =
        [
            .. need.Tasks.Concat(Replaced.SelectMany(v => v.Tasks)).Distinct().Where(_tasks.ContainsKey)
                .Order(StringComparer.Ordinal).Select(t => _tasks[t]),
        ];
        Staying = [.. Published.Visits.Except(Replaced).OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal)];
        Target = Urgent.Min(t => t.TargetBy ?? (t.LateFrom - 1L));
        LateFrom = Urgent.Min(t => t.LateFrom);
    }

    public WeekProblem Problem { get; }

    public WeekPlan Published { get; }

    public PatientHome Patient { get; }

    /// <summary>The tasks that made it urgent.</summary>
    public ImmutableArray<CareTask> Urgent { get; }

    /// <summary>All tasks of the new visit.</summary>
    public ImmutableArray<CareTask> Care { get; }

    public ImmutableArray<PlannedVisit> Replaced { get; }

    /// <summary>The published visits that are not replaced, by start.</summary>
    public ImmutableArray<PlannedVisit> Staying { get; }

    /// <summary>Last start that meets the target.</summary>
    public long Target { get; }

    /// <summary>First start that is late.</summary>
    public int LateFrom { get; }

    public Nurse Nurse(string id) => _nurses[id];

    public bool IsFixed(PlannedVisit visit) => _fixed.Contains(visit.Id);

    public int PlaceOf(PlannedVisit visit) => _patients[visit.Patient].Place;

    public PatientHome PatientOf(PlannedVisit visit) => _patients[visit.Patient];

    public IEnumerable<CareTask> CareOf(PlannedVisit visit) => visit.Tasks.Where(_tasks.ContainsKey).Select(t => _tasks[t]);

    /// <summary>The new visit with a nurse, not yet timed.</summary>
    public PlannedVisit NewVisit(Nurse nurse, Nurse? second = null) => new()
    {
        Id = NewName(),
        Patient = Patient.Id,
        Nurse = nurse.Id,
        Second = second?.Id,
        Start = 0,
        Minutes = MinutesOf(Patient, Care, nurse),
        Tasks = [.. Care.Select(t => t.Id)],
    };

    public static int MinutesOf(PatientHome patient, IReadOnlyCollection<CareTask> care, Nurse nurse)
    {
        int minutes = care.Max(t => t.SetupMinutes) + care.Sum(t => t.WorkMinutes);
        return patient.InterpreterUnless is { } trait && !nurse.Traits.Contains(trait) ? minutes + patient.InterpreterMinutes : minutes;
    }

    /// <summary>The first start at or after an arrival that patient and care allow; -1 when there is none that day.</summary>
    public int StartAfter(PatientHome patient, IReadOnlyCollection<CareTask> care, int arrival)
    {
        int day = CompiledWeek.DayOf(arrival);
        int from = Math.Max(Math.Max(arrival, Problem.Now), care.Max(t => t.Opens)), to = care.Min(t => t.HardLatest);
        Span[] spans = [new Span(from, Math.Min(to, ((day + 1) * 1440) - 1))];
        if (spans[0].From > spans[0].To) return -1;
        spans = SpanSet.Both(spans, patient.StartSpans.AsSpan());
        foreach (CareTask task in care) spans = SpanSet.Both(spans, task.StartSpans.AsSpan());
        return SpanSet.NextAllowed(spans, from);
    }

    private string NewName()
    {
        string name = "urgent " + Urgent[0].Id;
        for (int n = 2; Published.Visits.Any(v => v.Id == name); n++) name = $"urgent {Urgent[0].Id} ({n})";
        return name;
    }

    /// <summary>Named as replaced, or a later visit that holds care of the urgent visit.</summary>
    private bool IsReplaced(PlannedVisit visit, UrgentNeed need) =>
        !IsFixed(visit) && (need.ReplacesVisits.Contains(visit.Id) || visit.Tasks.Any(need.Tasks.Contains));

    private void RefuseUnknown(UrgentNeed need)
    {
        if (!_patients.ContainsKey(need.Patient)) throw new ArgumentException($"Patient {need.Patient} is not in the problem.", nameof(need));
        if (need.Tasks.IsDefaultOrEmpty) throw new ArgumentException("An urgent need has at least one task.", nameof(need));
        if (need.Tasks.FirstOrDefault(t => !_tasks.TryGetValue(t, out CareTask? k) || k.Patient != need.Patient) is { } task)
            throw new ArgumentException($"Task {task} is not a task of {need.Patient} in the problem.", nameof(need));
        if (need.ReplacesVisits.FirstOrDefault(r => Published.Visits.All(v => v.Id != r)) is { } visit)
            throw new ArgumentException($"Visit {visit} is not in the published plan.", nameof(need));
        if (Published.Visits.FirstOrDefault(v => !_nurses.ContainsKey(v.Nurse) || !_patients.ContainsKey(v.Patient)
            || (v.Second is { } s && !_nurses.ContainsKey(s))) is { } stranger)
            throw new ArgumentException($"Published visit {stranger.Id} names a patient or nurse who is not in the problem.", nameof(need));
    }
}
