using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>A published plan with everything the problem says about its visits, looked up once; answers and mends work on it.</summary>
internal sealed class StandingTable
{
    private readonly sbyte[] _able;

    public StandingTable(WeekProblem problem, WeekPlan plan, IReadOnlyCollection<RoadChange> changes)
    {
        Problem = problem;
        Plan = plan;
        NurseIndex = Index(problem.Nurses.Select(n => n.Id));
        PatientIndex = Index(problem.Patients.Select(p => p.Id));
        Tasks = problem.Tasks.ToDictionary(t => t.Id, StringComparer.Ordinal);
        RefuseStrangers(plan);
        Roads = new RoadTimes(problem, changes);
        var isFixed = problem.FixedVisits().Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        Visits = [.. plan.Visits.OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal)
            .Select(v => new StandingVisit(this, v, CareOf(v), isFixed.Contains(v.Id)))];
        FirstDay = Math.Min(0, Visits.Length == 0 ? 0 : CompiledWeek.DayOf(Visits[0].Was.Start));
        Days = Math.Max(problem.DayCount, Visits.Length == 0 ? 0 : CompiledWeek.DayOf(Visits[^1].Was.Start) + 1) - FirstDay;
        Shifts = new Shift?[problem.Nurses.Length * Days];
        for (int n = 0; n < problem.Nurses.Length; n++)
        {
            foreach (Shift shift in problem.Nurses[n].Shifts)
            {
                if (shift.Day >= FirstDay && shift.Day < FirstDay + Days) Shifts[Line(n, shift.Day)] = shift;
            }
        }

        ILookup<int, int> ofPatient = Enumerable.Range(0, Visits.Length).ToLookup(v => Visits[v].Patient);
        OfPatient = [.. Enumerable.Range(0, problem.Patients.Length).Select(p => ofPatient[p].ToArray())];
        ILookup<string, string> tasksOf = problem.Tasks.ToLookup(t => t.Patient, t => t.Id, StringComparer.Ordinal);
        TasksOf = [.. problem.Patients.Select(p => tasksOf[p.Id].ToArray())];
        VisitIndex = Index(Visits.Select(v => v.Was.Id));
        _able = new sbyte[(Visits.Length + 1) * problem.Nurses.Length];
        Base = new StandingState(this);
        Tie();
    }

    public WeekProblem Problem { get; }

    public WeekPlan Plan { get; }

    public Dictionary<string, int> NurseIndex { get; }

    public Dictionary<string, int> PatientIndex { get; }

    public Dictionary<string, int> VisitIndex { get; }

    public Dictionary<string, CareTask> Tasks { get; }

    public RoadTimes Roads { get; }

    /// <summary>By start, then identifier.</summary>
    public StandingVisit[] Visits { get; }

    public int FirstDay { get; }

    public int Days { get; }

    /// <summary>By line: the shift, on call or not; empty when off.</summary>
    public Shift?[] Shifts { get; }

    public int[][] OfPatient { get; }

    /// <summary>By patient: identifiers of her care.</summary>
    public string[][] TasksOf { get; }

    /// <summary>The plan as published.</summary>
    public StandingState Base { get; }

    /// <summary>A nurse on a day of the problem.</summary>
    public int Line(int nurse, int day) => (nurse * Days) + day - FirstDay;

    public int NurseOf(int line) => line / Days;

    public int DayOf(int line) => (line % Days) + FirstDay;

    public int PlaceOf(int patient) => Problem.Nurses.Length + patient;

    public int PlaceOfDrop(int drop) => Problem.Nurses.Length + Problem.Patients.Length + drop;

    /// <summary>Minutes of a visit with a nurse.</summary>
    public int MinutesOf(StandingVisit visit, int nurse) =>
        visit.Home.InterpreterUnless is { } trait && !Problem.Nurses[nurse].Traits.Contains(trait)
            ? visit.BaseMinutes + visit.Home.InterpreterMinutes
            : visit.BaseMinutes;

    /// <summary>Whether a nurse may make a published visit on a day.</summary>
    public bool Able(int index, int nurse, int day)
    {
        ref sbyte known = ref _able[(index * Problem.Nurses.Length) + nurse];
        StandingVisit visit = Visits[index];
        if (known == 0) known = Scope.Fault(Problem, visit.Home, visit.Care, Problem.Nurses[nurse], Problem.DayCount - 1) is null ? (sbyte)1 : (sbyte)2;
        return known == 1 || Scope.Fault(Problem, visit.Home, visit.Care, Problem.Nurses[nurse], day) is null;
    }

    public IEnumerable<CareTask> CareOf(PlannedVisit visit) =>
        (visit.Tasks.IsDefault ? [] : visit.Tasks).Where(Tasks.ContainsKey).Select(t => Tasks[t]);

    private void RefuseStrangers(WeekPlan plan)
    {
        if (plan.Visits.FirstOrDefault(v => !NurseIndex.ContainsKey(v.Nurse) || !PatientIndex.ContainsKey(v.Patient)
            || (v.Second is { } s && !NurseIndex.ContainsKey(s))) is { } stranger)
            throw new ArgumentException($"Published visit {stranger.Id} names a patient or nurse who is not in the problem.", nameof(plan));
    }

    private void Tie()
    {
        var visitOf = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int v = 0; v < Visits.Length; v++)
        {
            foreach (CareTask task in Visits[v].Care) visitOf.TryAdd(task.Id, v);
        }

        var ties = Problem.Tasks
            .Where(t => t.MinGap > 0 && t.After is { } before && visitOf.ContainsKey(before) && visitOf.ContainsKey(t.Id))
            .Select(t => (Before: visitOf[t.After!], After: visitOf[t.Id], Task: t))
            .Where(t => t.Before != t.After);
        foreach (var (before, after, task) in ties)
        {
            Visits[after].Ties = [.. Visits[after].Ties, new ChainTie(before, task.MinGap, task.GapInDays, true)];
            Visits[before].Ties = [.. Visits[before].Ties, new ChainTie(after, task.MinGap, task.GapInDays, false)];
        }
    }

    private static Dictionary<string, int> Index(IEnumerable<string> ids)
    {
        var index = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (string id in ids) index.TryAdd(id, index.Count);
        return index;
    }
}
