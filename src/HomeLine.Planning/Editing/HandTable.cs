using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Editing;

/// <summary>A plan and its problem looked up by identifier, patient and nurse-day.</summary>
internal sealed class HandTable
{
    private readonly Dictionary<string, PlannedVisit> _visits;
    private readonly Dictionary<string, CareTask> _tasks;
    private readonly Dictionary<string, PatientHome> _patients;
    private readonly Dictionary<string, Nurse> _nurses;
    private readonly Dictionary<(string Nurse, int Day), ImmutableArray<PlannedVisit>> _days;
    private readonly ILookup<string, PlannedVisit> _ofPatient;
    private readonly ILookup<string, CareTask> _tasksOf;
    private readonly HashSet<string> _fixed;
    private readonly IReadOnlySet<string> _pinned;

    public HandTable(WeekProblem problem, ImmutableArray<PlannedVisit> visits, IReadOnlySet<string> pinned)
    {
        Problem = problem;
        Trips = TripTimes.Of(problem);
        _pinned = pinned;
        _visits = visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        _tasks = problem.Tasks.ToDictionary(t => t.Id, StringComparer.Ordinal);
        _patients = problem.Patients.ToDictionary(p => p.Id, StringComparer.Ordinal);
        _nurses = problem.Nurses.ToDictionary(n => n.Id, StringComparer.Ordinal);
        if (visits.FirstOrDefault(v => !_patients.ContainsKey(v.Patient) || !_nurses.ContainsKey(v.Nurse)) is { } stranger)
            throw new ArgumentException($"Visit {stranger.Id} names people who are not in the problem.", nameof(visits));
        _fixed = problem.FixedVisits().Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        _ofPatient = visits.ToLookup(v => v.Patient, StringComparer.Ordinal);
        _tasksOf = problem.Tasks.ToLookup(t => t.Patient, StringComparer.Ordinal);
        _days = visits.SelectMany(v => PeopleOf(v).Select(n => (Nurse: n, Visit: v)))
            .GroupBy(s => (s.Nurse, DayOf(s.Visit)))
            .ToDictionary(g => g.Key, g => g.Select(s => s.Visit).OrderBy(v => v.Start).ToImmutableArray());
        Published = problem.Published is { Visits.IsDefault: false } published
            ? published.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal)
            : [];
    }

    public WeekProblem Problem { get; }

    public TripTimes Trips { get; }

    /// <summary>What was promised, by visit.</summary>
    public Dictionary<string, PlannedVisit> Published { get; }

    public PlannedVisit Visit(string id) => _visits.TryGetValue(id, out PlannedVisit? found) ? found : throw new ArgumentException($"There is no visit {id}.", nameof(id));

    public CareTask Task(string id) => _tasks.TryGetValue(id, out CareTask? found) ? found : throw new ArgumentException($"There is no task {id}.", nameof(id));

    public PatientHome Patient(string id) => _patients[id];

    public Nurse Nurse(string id) => _nurses.TryGetValue(id, out Nurse? found) ? found : throw new ArgumentException($"There is no nurse {id}.", nameof(id));

    public bool Stays(string visit) => _fixed.Contains(visit) || _pinned.Contains(visit);

    public bool IsPinned(string visit) => _pinned.Contains(visit);

    public bool Knows(string visit) => _visits.ContainsKey(visit) || Published.ContainsKey(visit);

    public ImmutableArray<PlannedVisit> Day(string nurse, int day) => _days.TryGetValue((nurse, day), out var visits) ? visits : [];

    public IEnumerable<PlannedVisit> OfPatient(string patient) => _ofPatient[patient];

    public IEnumerable<CareTask> TasksOf(string patient) => _tasksOf[patient];

    /// <summary>The care of a visit that the problem knows.</summary>
    public ImmutableArray<CareTask> CareOf(PlannedVisit visit) => [.. visit.Tasks.Where(_tasks.ContainsKey).Select(t => _tasks[t])];

    /// <summary>Minutes of a visit with another nurse: those it has, with or without the interpreter.</summary>
    public int MinutesWith(PlannedVisit visit, string nurse)
    {
        if (visit.Nurse == nurse) return visit.Minutes;
        return visit.Minutes - Interpreter(visit.Patient, visit.Nurse) + Interpreter(visit.Patient, nurse);
    }

    /// <summary>Minutes of a visit that does this care.</summary>
    public int MinutesOf(ImmutableArray<CareTask> care, string nurse) =>
        care.Max(t => t.SetupMinutes) + care.Sum(t => t.WorkMinutes) + Interpreter(care[0].Patient, nurse);

    /// <summary>Most minutes from a visit's start to a drop point; the largest number where the nurse draws nothing there or nobody drives to one.</summary>
    public int MostToDrop(PlannedVisit visit, string nurse) => Problem.Rules.HandInMinutes is null || visit.Nurse != nurse
        ? int.MaxValue
        : CareOf(visit).Select(t => t.DrawToDropMinutes ?? int.MaxValue).Append(int.MaxValue).Min();

    /// <summary>A nurse's day as far as specimens go, read for where she hands them in.</summary>
    public HandInStops Stops(string nurse, IReadOnlyList<PlannedVisit> visits)
    {
        var stops = new HandInStops(Problem, (from, to, leave) => Trips.Leaving(from, to, leave), drop => Problem.DropPoints[drop].Place);
        stops.Reserve(visits.Count);
        for (int i = 0; i < visits.Count; i++)
        {
            PlannedVisit visit = visits[i];
            stops.Seats[i] = new DropSeat(
                Patient(visit.Patient).Place,
                visit.Start,
                visit.Start + visit.Minutes + Problem.Rules.DocumentationMinutes,
                MostToDrop(visit, nurse),
                _fixed.Contains(visit.Id));
        }

        stops.Read(visits.Count, Nurse(nurse).Home);
        return stops;
    }

    public static IEnumerable<string> PeopleOf(PlannedVisit visit) => visit.Second is { } second ? [visit.Nurse, second] : [visit.Nurse];

    public static int DayOf(PlannedVisit visit) => CompiledWeek.DayOf(visit.Start);

    private int Interpreter(string patient, string nurse) =>
        Patient(patient) is { InterpreterUnless: { } trait } home && !Nurse(nurse).Traits.Contains(trait) ? home.InterpreterMinutes : 0;
}
