using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Week;

/// <summary>
/// The best plan of a tiny week by trying everything: all care unmet or on any nurse-day, every order within a nurse-day, the starts of
/// <see cref="EveryStart"/>. Knows nothing of the search: rules and points are the checker's alone. For weeks with one person a visit, chains counted in days,
/// and one visit a patient a day. Visits that must stay have the name of their first task, and starts at which that is allowed.
/// </summary>
internal sealed class FullEnumeration
{
    private readonly WeekProblem _problem;

    /// <summary>The same with nothing that must stay, to judge one nurse-day by itself.</summary>
    private readonly WeekProblem _alone;
    private readonly CareTask[][] _units;
    private readonly (Nurse Nurse, Shift Shift)[] _days;
    private readonly bool[,] _able;
    private readonly EveryStart _starts;
    private readonly PlanScore _nothingDone;
    private readonly Dictionary<(int Day, int Set), (PlanScore Adds, PlannedVisit[] Visits)?> _routes = [];
    private PlanScore _best;

    public FullEnumeration(WeekProblem problem)
    {
        _problem = problem;
        _alone = problem with { Published = null, FrozenVisits = [] };
        _units = [.. problem.Tasks.GroupBy(t => t.Together is { } together ? (t.Patient, together) : ("", t.Id)).Select(g => g.ToArray())];
        _days =
        [
            .. problem.Nurses.SelectMany(n => n.Shifts.Where(s => !s.OnCall && s.Day < problem.DayCount).Select(s => (Nurse: n, Shift: s)))
                .OrderBy(d => d.Shift.Day).ThenBy(d => d.Nurse.Id, StringComparer.Ordinal),
        ];
        _starts = new EveryStart(problem);
        _nothingDone = Checker.Check(_alone, Plan([])).Score;
        _able = new bool[_units.Length, _days.Length];
        for (int u = 0; u < _units.Length; u++)
            for (int d = 0; d < _days.Length; d++) _able[u, d] = MayDo(u, d);
    }

    /// <summary>The best score of any plan.</summary>
    public PlanScore Best()
    {
        _best = _problem.FixedVisits().IsEmpty ? _nothingDone : new PlanScore(long.MaxValue, 0, 0, 0, 0, 0);
        Assign(0, new int[_units.Length]);
        return _best;
    }

    /// <summary>Place 0 is unmet, place d + 1 is nurse-day d.</summary>
    private void Assign(int unit, int[] place)
    {
        if (unit == place.Length)
        {
            Judge(place);
            return;
        }

        for (int d = 0; d < _days.Length; d++)
        {
            place[unit] = d + 1;
            if (_able[unit, d]) Assign(unit + 1, place);
        }

        place[unit] = 0;
        Assign(unit + 1, place);
    }

    private bool MayDo(int unit, int day)
    {
        if (_starts.First(_units[unit], _days[day].Nurse, _days[day].Shift) is not { } visit) return false;
        return !Checker.Check(_alone, Plan([visit])).Findings.Any(f => f.Rule is "H3" or "H6");
    }

    private void Judge(int[] place)
    {
        var visits = new List<PlannedVisit>();
        PlanScore least = _nothingDone;
        for (int d = 0; d < _days.Length; d++)
        {
            int set = 0;
            for (int u = 0; u < place.Length; u++)
            {
                if (place[u] == d + 1) set |= 1 << u;
            }

            if (set == 0) continue;
            if (Route(d, set) is not { } route) return;
            visits.AddRange(route.Visits);
            least = Plus(least, route.Adds);
        }

        // What nurse-days add up to leaves out only what makes it worse: further faces, visits beyond the orders, chains.
        if (least >= _best) return;
        CheckReport report = Checker.Check(_problem, Plan(visits));
        if (report.Accepted && report.Score < _best) _best = report.Score;
    }

    /// <summary>The best order of a set of care on a nurse-day; which is best does not depend on the other nurse-days.</summary>
    private (PlanScore Adds, PlannedVisit[] Visits)? Route(int day, int set)
    {
        if (_routes.TryGetValue((day, set), out var known)) return known;
        CareTask[][] bundles = [.. _units.Where((_, u) => (set & (1 << u)) != 0).SelectMany(u => u).GroupBy(t => t.Patient).Select(g => g.ToArray())];
        PlanScore best = default;
        PlannedVisit[]? found = null;
        foreach (CareTask[][] order in Orders(bundles))
        {
            foreach (PlannedVisit[] visits in _starts.Of(order, _days[day].Nurse, _days[day].Shift))
            {
                CheckReport report = Checker.Check(_alone, Plan(visits));
                if (report.Accepted && (found is null || report.Score < best)) (best, found) = (report.Score, visits);
            }
        }

        return _routes[(day, set)] = found is null ? null : (Plus(best, _nothingDone, -1), found);
    }

    private WeekPlan Plan(IReadOnlyCollection<PlannedVisit> visits)
    {
        var done = visits.SelectMany(v => v.Tasks).ToHashSet();
        return new WeekPlan([.. visits], [.. _problem.Tasks.Where(t => !done.Contains(t.Id)).Select(t => new UnmetTask(t.Id, [], []))], default);
    }

    private static PlanScore Plus(PlanScore a, PlanScore b, int times = 1) => new(
        a.Critical + (times * b.Critical), a.Risk + (times * b.Risk), a.Duties + (times * b.Duties),
        a.Work + (times * b.Work), a.People + (times * b.People), a.UnusedLife + (times * b.UnusedLife));

    private static IEnumerable<CareTask[][]> Orders(CareTask[][] items) => items.Length <= 1
        ? [items]
        : items.SelectMany((first, i) => Orders([.. items.Where((_, j) => j != i)]).Select(rest => (CareTask[][])[first, .. rest]));
}
