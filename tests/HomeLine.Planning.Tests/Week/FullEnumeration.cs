using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Week;

/// <summary>
/// The best plan of a tiny week by trying everything: every task unmet or on any nurse-day, every order within a nurse-day, every visit as early as
/// it can be. Knows nothing of the search: its plans are judged by the checker alone.
/// </summary>
internal sealed class FullEnumeration(WeekProblem problem)
{
    private readonly (Nurse Nurse, Shift Shift)[] _days =
        [.. problem.Nurses.SelectMany(n => n.Shifts.Select(s => (Nurse: n, Shift: s))).OrderBy(d => d.Shift.Day).ThenBy(d => d.Nurse.Id)];

    private readonly Dictionary<(int Day, int Set), (PlanScore Score, PlannedVisit[] Visits)?> _routes = [];

    public PlanScore Best()
    {
        var place = new int[problem.Tasks.Length];
        PlanScore best = Checker.Check(problem, Plan([])).Score;
        Assign(0, place, ref best);
        return best;
    }

    private void Assign(int task, int[] place, ref PlanScore best)
    {
        if (task == place.Length)
        {
            Judge(place, ref best);
            return;
        }

        for (int d = 0; d <= _days.Length; d++)
        {
            place[task] = d;
            if (d == 0 || Possible(task, d - 1)) Assign(task + 1, place, ref best);
        }
    }

    private bool Possible(int task, int day)
    {
        CareTask care = problem.Tasks[task];
        return care.Opens < (_days[day].Shift.Day + 1) * 1440 && care.HardLatest >= _days[day].Shift.Day * 1440;
    }

    private void Judge(int[] place, ref PlanScore best)
    {
        var visits = new List<PlannedVisit>();
        for (int d = 0; d < _days.Length; d++)
        {
            int set = 0;
            for (int t = 0; t < place.Length; t++)
            {
                if (place[t] == d + 1) set |= 1 << t;
            }

            if (set == 0) continue;
            if (Route(d, set) is not { } route) return;
            visits.AddRange(route.Visits);
        }

        CheckReport report = Checker.Check(problem, Plan(visits));
        if (report.Accepted && report.Score < best) best = report.Score;
    }

    /// <summary>The best order of a set of tasks on a nurse-day; what it adds to a plan does not depend on the other nurse-days.</summary>
    private (PlanScore Score, PlannedVisit[] Visits)? Route(int day, int set)
    {
        if (_routes.TryGetValue((day, set), out var known)) return known;
        CareTask[][] bundles = [.. problem.Tasks.Where((_, t) => (set & (1 << t)) != 0).GroupBy(t => t.Patient).Select(g => g.ToArray())];
        (PlanScore Score, PlannedVisit[] Visits)? best = null;
        foreach (CareTask[][] order in Orders(bundles))
        {
            if (Timed(day, order) is not { } visits) continue;
            CheckReport report = Checker.Check(problem, Plan(visits));
            if (report.Accepted && (best is null || report.Score < best.Value.Score)) best = (report.Score, visits);
        }

        return _routes[(day, set)] = best;
    }

    private PlannedVisit[]? Timed(int day, CareTask[][] order)
    {
        (Nurse nurse, Shift shift) = _days[day];
        int leave = shift.From, place = nurse.Home;
        var visits = new List<PlannedVisit>();
        foreach (CareTask[] care in order)
        {
            PatientHome patient = problem.Patients.Single(p => p.Id == care[0].Patient);
            int start = Math.Max(leave + problem.Travel.Minutes(place, patient.Place), care.Max(t => t.Opens));
            bool interpreter = patient.InterpreterUnless is { } trait && !nurse.Traits.Contains(trait);
            int minutes = care.Max(t => t.SetupMinutes) + care.Sum(t => t.WorkMinutes) + (interpreter ? patient.InterpreterMinutes : 0);
            if (start >= (shift.Day + 1) * 1440) return null;
            visits.Add(new PlannedVisit
            {
                Id = care[0].Id,
                Patient = patient.Id,
                Nurse = nurse.Id,
                Start = start,
                Minutes = minutes,
                Tasks = [.. care.Select(t => t.Id)],
            });
            (leave, place) = (start + minutes + problem.Rules.DocumentationMinutes, patient.Place);
        }

        return [.. visits];
    }

    private WeekPlan Plan(IReadOnlyCollection<PlannedVisit> visits)
    {
        var done = visits.SelectMany(v => v.Tasks).ToHashSet();
        return new WeekPlan([.. visits], [.. problem.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))], default);
    }

    private static IEnumerable<CareTask[][]> Orders(CareTask[][] items) => items.Length <= 1
        ? [items]
        : items.SelectMany((first, i) => Orders([.. items.Where((_, j) => j != i)]).Select(rest => (CareTask[][])[first, .. rest]));
}
