using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>What it means that a certain nurse visits a certain patient, and whom the patients have near.</summary>
internal sealed class PeopleTable
{
    private const int NearestKept = 40;

    public PeopleTable(CompiledWeek week)
    {
        WeekProblem problem = week.Problem;
        int nurses = week.NurseCount, routes = week.Routes.Count;
        Crew = [.. problem.Patients.Select(p => p.CrewSize)];
        Interpreter = new int[week.PatientCount * nurses];
        VisitPoints = new int[week.PatientCount * nurses];
        SecondAble = new bool[week.PatientCount * routes];
        for (int p = 0; p < week.PatientCount; p++)
        {
            PatientHome patient = problem.Patients[p];
            for (int n = 0; n < nurses; n++)
            {
                Nurse nurse = problem.Nurses[n];
                bool interpreter = patient.InterpreterUnless is { } trait && !nurse.Traits.Contains(trait);
                Interpreter[(p * nurses) + n] = interpreter ? patient.InterpreterMinutes : 0;
                VisitPoints[(p * nurses) + n] = Points(problem.Rules.Soft, patient, nurse);
            }

            for (int r = 0; r < routes; r++)
                SecondAble[(p * routes) + r] = week.Routes.Open[r] && Scope.HomeFault(patient, problem.Nurses[week.Routes.Nurse[r]]) is null;
        }

        Nearest = [.. Enumerable.Range(0, week.PatientCount).Select(p => NearestOf(week, p))];
    }

    public int[] Crew { get; }

    /// <summary>By patient and nurse: minutes added for an interpreter.</summary>
    public int[] Interpreter { get; }

    /// <summary>By patient and nurse: continuity and wishes.</summary>
    public int[] VisitPoints { get; }

    /// <summary>By patient and route: may be the second person.</summary>
    public bool[] SecondAble { get; }

    /// <summary>By patient: the nearest patients, itself first.</summary>
    public int[][] Nearest { get; }

    private static int Points(SoftPoints soft, PatientHome patient, Nurse nurse)
    {
        int wishes = patient.PreferredTraits.Count(t => !nurse.Traits.Contains(t)) * soft.MissingWish;
        if (patient.KnownNurses.IsEmpty) return wishes;
        int place = patient.KnownNurses.IndexOf(nurse.Id);
        return wishes + (place < 0 ? soft.UnknownNurse : place == 0 ? 0 : soft.BackupNurse);
    }

    private static int[] NearestOf(CompiledWeek week, int patient) =>
    [
        .. Enumerable.Range(0, week.PatientCount)
            .OrderBy(q => q == patient ? -1 : week.Roads.Minutes(week.Roads.OfPatient(patient), week.Roads.OfPatient(q)))
            .ThenBy(q => q)
            .Take(NearestKept),
    ];
}
