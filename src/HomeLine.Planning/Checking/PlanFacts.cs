using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Checking;

/// <summary>One visit with everything the problem knows about it; what the problem does not know is empty.</summary>
/// <param name="Visit">As planned.</param>
/// <param name="Patient">Its patient, where known.</param>
/// <param name="Nurse">Its nurse, where known.</param>
/// <param name="Second">Its second person, where named and known.</param>
/// <param name="Tasks">Its tasks that the problem knows.</param>
/// <param name="Day">The day of its start.</param>
/// <param name="Fixed">A fixed visit that is where it must be: a fact, and no rule is held against it.</param>
internal sealed record VisitFact(
    PlannedVisit Visit,
    PatientHome? Patient,
    Nurse? Nurse,
    Nurse? Second,
    ImmutableArray<CareTask> Tasks,
    int Day,
    bool Fixed)
{
    /// <summary>Visits it counts for: two when two people come.</summary>
    public int People => Visit.Second is null ? 1 : 2;

    /// <summary>Minutes it should take, derived from its tasks.</summary>
    public long DerivedMinutes
    {
        get
        {
            if (Tasks.IsEmpty) return 0;
            long minutes = Tasks.Max(t => t.SetupMinutes) + Tasks.Sum(t => (long)t.WorkMinutes);
            bool interpreter = Patient?.InterpreterUnless is { } trait && Nurse is not null && !Nurse.Traits.Contains(trait);
            return interpreter ? minutes + Patient!.InterpreterMinutes : minutes;
        }
    }
}

/// <summary>Plan and problem looked up once, tolerant of anything wrong in the plan.</summary>
internal sealed class PlanFacts
{
    private readonly Dictionary<string, CareTask> _tasks;
    private readonly Dictionary<string, VisitFact> _visitOfTask = new(StringComparer.Ordinal);

    public PlanFacts(WeekProblem problem, WeekPlan plan, ImmutableArray<RoadChange> changes)
    {
        Problem = problem;
        Trips = new TripTimes(problem.Travel, changes, problem.SlowHours);
        Plan = plan;
        _tasks = ById(problem.Tasks, t => t.Id);
        var patients = ById(problem.Patients, p => p.Id);
        var nurses = ById(problem.Nurses, n => n.Id);
        var published = ById(problem.FixedVisits(), v => v.Id);
        PlannedVisits = plan.Visits.IsDefault ? [] : plan.Visits;
        Visits = [.. PlannedVisits.Select(v => Fact(v, patients, nurses, published))];
        foreach (VisitFact fact in Visits)
            foreach (CareTask task in fact.Tasks) _visitOfTask.TryAdd(task.Id, fact);
        NurseDays = [.. NurseDayFact.All(this)];
    }

    public WeekProblem Problem { get; }

    public WeekPlan Plan { get; }

    /// <summary>Minutes of trips by when they are left for.</summary>
    public TripTimes Trips { get; }

    public ImmutableArray<PlannedVisit> PlannedVisits { get; }

    public ImmutableArray<VisitFact> Visits { get; }

    public ImmutableArray<NurseDayFact> NurseDays { get; }

    public bool Knows(string task) => _tasks.ContainsKey(task);

    /// <summary>The visit that does a task; empty when none does.</summary>
    public VisitFact? VisitOf(string task) => _visitOfTask.GetValueOrDefault(task);

    /// <summary>The visit that does the task before in the chain; empty without chain or when it is left out.</summary>
    public VisitFact? VisitBefore(CareTask task) => task.After is { } before ? VisitOf(before) : null;

    public static int DayOf(long minute) => (int)Math.Floor(minute / 1440.0);

    public static ImmutableArray<string> TasksOf(PlannedVisit visit) => visit.Tasks.IsDefault ? [] : visit.Tasks;

    public static bool SameFacts(PlannedVisit a, PlannedVisit b) =>
        a.Nurse == b.Nurse && a.Second == b.Second && a.Start == b.Start
        && (TasksOf(a).SequenceEqual(TasksOf(b)) || TasksOf(a).ToHashSet().SetEquals(TasksOf(b)));

    private VisitFact Fact(
        PlannedVisit visit,
        Dictionary<string, PatientHome> patients,
        Dictionary<string, Nurse> nurses,
        Dictionary<string, PlannedVisit> published) => new(
            visit,
            patients.GetValueOrDefault(visit.Patient),
            nurses.GetValueOrDefault(visit.Nurse),
            visit.Second is null ? null : nurses.GetValueOrDefault(visit.Second),
            TasksOf(visit) is [var only]
                ? _tasks.TryGetValue(only, out CareTask? task) ? [task] : []
                : [.. TasksOf(visit).Distinct().Where(_tasks.ContainsKey).Select(id => _tasks[id])],
            DayOf(visit.Start),
            published.TryGetValue(visit.Id, out PlannedVisit? was) && SameFacts(was, visit));

    private static Dictionary<string, T> ById<T>(IEnumerable<T> items, Func<T, string> id)
    {
        var found = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (T item in items) found.TryAdd(id(item), item);
        return found;
    }
}
