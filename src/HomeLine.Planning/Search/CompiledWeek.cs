using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>
/// The problem as arrays of whole numbers. A <i>route</i> is a nurse-day; a <i>unit</i> is a task, or the tasks that must be done together, or
/// everything a fixed visit does; a <i>visit slot</i> is a patient on a day, since a patient is visited once a day.
/// </summary>
internal sealed class CompiledWeek
{
    public CompiledWeek(WeekProblem problem)
    {
        ProblemFaults.Refuse(problem);
        Problem = problem;
        FixedVisits = [.. problem.FixedVisits()];
        FirstDay = Math.Min(0, FixedVisits.Length == 0 ? 0 : FixedVisits.Min(v => DayOf(v.Start)));
        int lastDay = Math.Max(problem.DayCount - 1, FixedVisits.Length == 0 ? 0 : FixedVisits.Max(v => DayOf(v.Start)));
        Days = lastDay - FirstDay + 1;
        NurseIndex = Index(problem.Nurses.Select(n => n.Id));
        PatientIndex = Index(problem.Patients.Select(p => p.Id));
        TaskIndex = Index(problem.Tasks.Select(t => t.Id));
        Roads = new Roads(problem, FirstDay, Days);
        Drops = new DropReach(problem);
        PlansDrops = problem.Rules.HandInMinutes is not null && problem.Tasks.Any(t => t.DrawToDropMinutes is not null);
        Routes = new RouteTable(this);
        Tasks = new TaskTable(this);
        People = new PeopleTable(this);
        Units = new UnitTable(this);
        Caps = new CapTable(this);
        FollowersElsewhere = FollowersOf();
        NothingToSettle = People.Crew.All(c => c == 1) && Units.HeldBack.All(h => !h);
    }

    public WeekProblem Problem { get; }

    public PlannedVisit[] FixedVisits { get; }

    /// <summary>The day that has index 0 in the tables: 0, or earlier when fixed visits lie before the horizon.</summary>
    public int FirstDay { get; }

    /// <summary>Days in the tables.</summary>
    public int Days { get; }

    public Dictionary<string, int> NurseIndex { get; }

    public Dictionary<string, int> PatientIndex { get; }

    public Dictionary<string, int> TaskIndex { get; }

    public Roads Roads { get; }

    public DropReach Drops { get; }

    /// <summary>Whether drives to drop points are part of the nurse-days.</summary>
    public bool PlansDrops { get; }

    /// <summary>
    /// Days are timed in several ways, of which one is kept. A way that care elsewhere, tied by minutes, rules out may come free again when that care moves: then the plan
    /// as written is better than what was counted, never worse.
    /// </summary>
    public bool TriesManyWays => Roads.Varies || PlansDrops;

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
