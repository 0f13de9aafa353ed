using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>What it means that a certain nurse visits a certain patient, and whom the patients have near.</summary>
internal sealed class PeopleTable
{
    private const int NearestKept = 40, NearNursesKept = 12;

    private readonly bool[] _welcome;
    private readonly int _nurses;
    private readonly Lazy<int[][]> _nearest;
    private readonly Lazy<int[][]> _nearNurses;

    public PeopleTable(CompiledWeek week)
    {
        WeekProblem problem = week.Problem;
        _nurses = week.NurseCount;
        Crew = [.. problem.Patients.Select(p => p.CrewSize)];
        Interpreter = new int[week.PatientCount * _nurses];
        VisitPoints = new int[week.PatientCount * _nurses];
        _welcome = new bool[week.PatientCount * _nurses];
        for (int p = 0; p < week.PatientCount; p++)
        {
            PatientHome patient = problem.Patients[p];
            for (int n = 0; n < _nurses; n++)
            {
                Nurse nurse = problem.Nurses[n];
                int seat = (p * _nurses) + n;
                bool interpreter = patient.InterpreterUnless is { } trait && !nurse.Traits.Contains(trait);
                Interpreter[seat] = interpreter ? patient.InterpreterMinutes : 0;
                VisitPoints[seat] = Points(problem.Rules.Soft, patient, nurse);
                _welcome[seat] = Scope.HomeFault(patient, nurse) is null;
            }
        }

        _nearest = new Lazy<int[][]>(() => NearestOf(week));
        _nearNurses = new Lazy<int[][]>(() => NearNursesOf(week));
    }

    public int[] Crew { get; }

    /// <summary>By patient and nurse: minutes added for an interpreter.</summary>
    public int[] Interpreter { get; }

    /// <summary>By patient and nurse: continuity and wishes.</summary>
    public int[] VisitPoints { get; }

    /// <summary>By patient: the nearest patients, itself first. Looked up when first asked for: who only tries a place or two never asks.</summary>
    public int[][] Nearest => _nearest.Value;

    /// <summary>By patient: nurses she knows, then those who live nearest; when first asked for, too.</summary>
    public int[][] NearNurses => _nearNurses.Value;

    /// <summary>Whether the home receives a nurse at all.</summary>
    public bool Welcome(int patient, int nurse) => _welcome[(patient * _nurses) + nurse];

    private static int[][] NearestOf(CompiledWeek week)
    {
        var found = new int[week.PatientCount][];
        var patients = new Closest(week.PatientCount);
        for (int p = 0; p < found.Length; p++)
        {
            int here = week.Roads.OfPatient(p), self = p;
            found[p] = patients.Of(NearestKept, q => q == self ? -1 : week.Roads.Minutes(here, week.Roads.OfPatient(q)));
        }

        return found;
    }

    private static int[][] NearNursesOf(CompiledWeek week)
    {
        var found = new int[week.PatientCount][];
        var nurses = new Closest(week.NurseCount);
        for (int p = 0; p < found.Length; p++)
        {
            int here = week.Roads.OfPatient(p);
            int[] near = nurses.Of(NearNursesKept, n => week.Roads.Minutes(here, Roads.OfNurse(n)));
            found[p] = [.. week.Problem.Patients[p].KnownNurses.Where(week.NurseIndex.ContainsKey).Select(n => week.NurseIndex[n]).Union(near)];
        }

        return found;
    }

    private static int Points(SoftPoints soft, PatientHome patient, Nurse nurse)
    {
        int wishes = 0;
        foreach (string trait in patient.PreferredTraits)
        {
            if (!nurse.Traits.Contains(trait)) wishes += soft.MissingWish;
        }

        if (patient.KnownNurses.IsEmpty) return wishes;
        int place = patient.KnownNurses.IndexOf(nurse.Id);
        return wishes + (place < 0 ? soft.UnknownNurse : place == 0 ? 0 : soft.BackupNurse);
    }
}
