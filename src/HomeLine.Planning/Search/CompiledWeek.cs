using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// The problem as arrays of whole numbers. A <i>route</i> is a nurse-day; a <i>unit</i> is a task, or the tasks that must be done together, or
/// everything a fixed visit does; a <i>visit slot</i> is a patient on a day, since a patient is visited once a day.
/// </summary>
internal sealed class CompiledWeek
{
    private readonly RoadChange[][] _closuresOfDay;
    private readonly Roads[] _roadsOfDay;

    public CompiledWeek(WeekProblem problem)
    {
        ProblemFaults.Refuse(problem);
        Problem = problem = WholeDays.Of(problem);
        FixedVisits = [.. problem.FixedVisits()];
        FirstDay = Math.Min(0, FixedVisits.Length == 0 ? 0 : FixedVisits.Min(v => DayOf(v.Start)));
        int lastDay = Math.Max(problem.DayCount - 1, FixedVisits.Length == 0 ? 0 : FixedVisits.Max(v => DayOf(v.Start)));
        Days = lastDay - FirstDay + 1;
        NurseIndex = Index(problem.Nurses.Select(n => n.Id));
        PatientIndex = Index(problem.Patients.Select(p => p.Id));
        TaskIndex = Index(problem.Tasks.Select(t => t.Id));
        Roads = new Roads(problem);
        _closuresOfDay = [.. Enumerable.Range(FirstDay, Days).Select(day => problem.RoadChanges.Where(c => c.From == day * 1440).ToArray())];
        _roadsOfDay = [.. _closuresOfDay.Select(closures => closures.Length == 0 ? Roads : new Roads(problem, closures))];
        Routes = new RouteTable(this);
        Tasks = new TaskTable(this);
        People = new PeopleTable(this);
        Units = new UnitTable(this);
        Caps = new CapTable(this);
        FollowersElsewhere = FollowersOf();
        NothingToSettle = People.Crew.All(c => c == 1) && Units.HeldBack.All(h => !h);
    }

    /// <summary>The problem, with closures counted all day.</summary>
    public WeekProblem Problem { get; }

    public PlannedVisit[] FixedVisits { get; }

    /// <summary>The day that has index 0 in the tables: 0, or earlier when fixed visits lie before the horizon.</summary>
    public int FirstDay { get; }

    /// <summary>Days in the tables.</summary>
    public int Days { get; }

    public Dictionary<string, int> NurseIndex { get; }

    public Dictionary<string, int> PatientIndex { get; }

    public Dictionary<string, int> TaskIndex { get; }

    /// <summary>Roads as usual.</summary>
    public Roads Roads { get; }

    /// <summary>
    /// The roads of a nurse-day. On a day on which roads are closed for a while the longer way counts all day: stricter than the checker, who looks at
    /// when a trip is left for.
    /// </summary>
    public Roads RoadsOn(int route) => _roadsOfDay[Routes.Day[route]];

    /// <summary>Minutes from a place to another one that is nobody's home, on a nurse-day; the longer way counts as above.</summary>
    public int MinutesBetween(int from, int to, int route)
    {
        int minutes = Problem.Travel.Minutes(from, to);
        foreach (RoadChange closure in _closuresOfDay[Routes.Day[route]]) minutes = Math.Max(minutes, closure.Travel.Minutes(from, to));
        return minutes;
    }

    public RouteTable Routes { get; }

    public TaskTable Tasks { get; }

    public UnitTable Units { get; }

    public PeopleTable People { get; }

    /// <summary>Visits of a kind a nurse makes at most.</summary>
    public CapTable Caps { get; }

    /// <summary>By patient: other patients whose care follows hers in a chain; hardly ever any.</summary>
    public int[][] FollowersElsewhere { get; }

    /// <summary>No two-person visits, and no chain counted in minutes.</summary>
    public bool NothingToSettle { get; }

    public int PatientCount => Problem.Patients.Length;

    public int NurseCount => Problem.Nurses.Length;

    /// <summary>The slot of a patient on a day of the tables.</summary>
    public int Slot(int patient, int day) => (patient * Days) + day;

    /// <summary>The patient of a slot of the tables.</summary>
    public int PatientOf(int slot) => slot / Days;

    public static int DayOf(int minute) => (int)Math.Floor(minute / 1440.0);

    private int[][] FollowersOf()
    {
        ILookup<int, int> elsewhere = Enumerable.Range(0, Tasks.Count)
            .SelectMany(t => Tasks.Next[t], (t, next) => (Patient: Units.Patient[Units.OfTask[t]], Other: Units.Patient[Units.OfTask[next]]))
            .Where(p => p.Patient != p.Other).ToLookup(p => p.Patient, p => p.Other);
        return [.. Enumerable.Range(0, PatientCount).Select(p => elsewhere[p].Distinct().ToArray())];
    }

    private static Dictionary<string, int> Index(IEnumerable<string> ids) =>
        ids.Select((id, i) => (id, i)).ToDictionary(p => p.id, p => p.i, StringComparer.Ordinal);
}
