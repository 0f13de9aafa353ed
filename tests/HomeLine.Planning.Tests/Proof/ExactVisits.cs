using System.Collections.Immutable;
using Google.OrTools.Sat;
using Google.OrTools.Util;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Proof;

/// <summary>Which care is done on which day, when each patient's visit starts, and how long it takes.</summary>
internal sealed class ExactVisits
{
    private readonly CpModel _model;
    private readonly WeekProblem _problem;

    public ExactVisits(CpModel model, WeekProblem problem)
    {
        (_model, _problem) = (model, problem);
        (int p, int t, int d) = (problem.Patients.Length, problem.Tasks.Length, problem.DayCount);
        (Visit, Start, Minutes, Does) = (new BoolVar[p, d], new IntVar[p, d], new IntVar[p, d], new BoolVar[t, d]);
        PatientOf = [.. problem.Tasks.Select(task => problem.Patients.IndexOf(problem.Patients.Single(home => home.Id == task.Patient)))];
        for (int i = 0; i < p; i++)
            for (int day = 0; day < d; day++) AddVisit(i, day);
        for (int i = 0; i < t; i++) AddTask(i);
        for (int i = 0; i < p; i++)
            for (int day = 0; day < d; day++) AddMinutes(i, day);
        foreach (var group in Enumerable.Range(0, t).Where(i => problem.Tasks[i].Together is not null).GroupBy(i => (PatientOf[i], problem.Tasks[i].Together)))
        {
            int first = group.First();
            foreach (int other in group.Skip(1))
                for (int day = 0; day < d; day++) model.Add(Does[other, day] == Does[first, day]);
        }
    }

    /// <summary>By patient and day: a visit is made.</summary>
    public BoolVar[,] Visit { get; }

    public IntVar[,] Start { get; }

    /// <summary>Minutes in the home.</summary>
    public IntVar[,] Minutes { get; }

    /// <summary>By task and day: it is done then.</summary>
    public BoolVar[,] Does { get; }

    public int[] PatientOf { get; }

    public IEnumerable<int> TasksOf(int patient) => Enumerable.Range(0, PatientOf.Length).Where(t => PatientOf[t] == patient);

    public LinearExpr Done(int task) => LinearExpr.Sum(Enumerable.Range(0, _problem.DayCount).Select(d => Does[task, d]));

    /// <summary>One nurse who may do the care, and a second person where two come.</summary>
    public void SendSomebody(ExactNurseDay[] days)
    {
        for (int p = 0; p < _problem.Patients.Length; p++)
        {
            int patient = p;
            PatientHome home = _problem.Patients[p];
            for (int d = 0; d < _problem.DayCount; d++)
            {
                ExactNurseDay[] there = [.. days.Where(r => r.Shift.Day == d)];
                _model.Add(LinearExpr.Sum(there.Select(r => r.Care[patient])) == Visit[p, d]);
                _model.Add(LinearExpr.Sum(there.Select(r => r.Second[patient])) == (home.CrewSize > 1 ? 1 : 0) * (LinearExpr)Visit[p, d]);
                foreach (ExactNurseDay route in there)
                {
                    if (!Welcome(home, route.Nurse)) _model.Add(route.Present(p) == 0);
                    if (!route.Nurse.Licences.Any(l => l.State == home.State && l.LastDay >= d)) _model.Add(route.Care[p] == 0);
                    foreach (int t in TasksOf(p).Where(t => _problem.Tasks[t].Skills.Any(s => !route.Nurse.Skills.Contains(s)))) _model.AddBoolOr([Does[t, d].Not(), route.Care[p].Not()]);
                    if (home.InterpreterUnless is { } trait && !route.Nurse.Traits.Contains(trait)) _model.AddImplication(route.Care[p], Interpreter(p, d));
                    else _model.AddImplication(route.Care[p], Interpreter(p, d).Not());
                }
            }
        }
    }

    public List<PlannedVisit> Written(CpSolver solver, ExactNurseDay[] days)
    {
        var visits = new List<PlannedVisit>();
        for (int p = 0; p < _problem.Patients.Length; p++)
        {
            for (int d = 0; d < _problem.DayCount; d++)
            {
                if (!solver.BooleanValue(Visit[p, d])) continue;
                int patient = p, day = d;
                visits.Add(new PlannedVisit
                {
                    Id = $"{_problem.Patients[p].Id} {d}",
                    Patient = _problem.Patients[p].Id,
                    Nurse = days.Single(r => r.Shift.Day == day && solver.BooleanValue(r.Care[patient])).Nurse.Id,
                    Second = days.SingleOrDefault(r => r.Shift.Day == day && solver.BooleanValue(r.Second[patient]))?.Nurse.Id,
                    Start = (int)solver.Value(Start[p, d]),
                    Minutes = (int)solver.Value(Minutes[p, d]),
                    Tasks = [.. TasksOf(p).Where(t => solver.BooleanValue(Does[t, day])).Select(t => _problem.Tasks[t].Id)],
                });
            }
        }

        return visits;
    }

    private readonly Dictionary<(int, int), BoolVar> _interpreter = [];

    private BoolVar Interpreter(int patient, int day)
    {
        if (!_interpreter.TryGetValue((patient, day), out BoolVar? there)) _interpreter[(patient, day)] = there = _model.NewBoolVar("");
        return there;
    }

    private void AddVisit(int p, int d)
    {
        int first = d * 1440, last = first + 1439;
        Visit[p, d] = _model.NewBoolVar($"visit {p} {d}");
        Start[p, d] = _model.NewIntVar(first, last, $"start {p} {d}");
        Minutes[p, d] = _model.NewIntVar(0, 1440, $"minutes {p} {d}");
        _model.Add(Start[p, d] >= _problem.Now).OnlyEnforceIf(Visit[p, d]);
        Within(Start[p, d], _problem.Patients[p].StartSpans, Visit[p, d]);
    }

    private void AddTask(int t)
    {
        CareTask task = _problem.Tasks[t];
        int p = PatientOf[t];
        for (int d = 0; d < _problem.DayCount; d++)
        {
            BoolVar does = Does[t, d] = _model.NewBoolVar($"does {t} {d}");
            _model.AddImplication(does, Visit[p, d]);
            _model.Add(Start[p, d] >= task.Opens).OnlyEnforceIf(does);
            _model.Add(Start[p, d] <= task.HardLatest).OnlyEnforceIf(does);
            Within(Start[p, d], task.StartSpans, does);
            if (task.DrawToDropMinutes is { } most) Drop(p, d, most, does);
        }

        _model.Add(Done(t) <= 1);
    }

    private void AddMinutes(int p, int d)
    {
        int[] tasks = [.. TasksOf(p)];
        _model.AddBoolOr([Visit[p, d].Not(), .. tasks.Select(t => Does[t, d])]);
        IntVar ready = _model.NewIntVar(0, 1440, "");
        _model.AddMaxEquality(ready, tasks.Select(t => _problem.Tasks[t].SetupMinutes * (LinearExpr)Does[t, d]).Append(LinearExpr.Constant(0)));
        _model.Add(Minutes[p, d] == ready + LinearExpr.Sum(tasks.Select(t => _problem.Tasks[t].WorkMinutes * (LinearExpr)Does[t, d]))
            + (_problem.Patients[p].InterpreterMinutes * (LinearExpr)Interpreter(p, d)));
    }

    private void Drop(int p, int d, int most, BoolVar does)
    {
        var ways = new List<ILiteral> { does.Not() };
        foreach (DropPoint point in _problem.DropPoints)
        {
            int drive = _problem.Travel.Minutes(_problem.Patients[p].Place, point.Place);
            foreach (int cutoff in point.Cutoffs.Where(c => c >= d * 1440 && c < (d + 1) * 1440))
            {
                BoolVar way = _model.NewBoolVar("");
                _model.Add(Start[p, d] + Minutes[p, d] + drive <= cutoff).OnlyEnforceIf(way);
                _model.Add(Minutes[p, d] + drive <= most).OnlyEnforceIf(way);
                ways.Add(way);
            }
        }

        _model.AddBoolOr(ways);
    }

    private void Within(IntVar start, ImmutableArray<Span> spans, BoolVar when)
    {
        if (!spans.IsEmpty) _model.AddLinearExpressionInDomain(start, Domain.FromIntervals([.. spans.Select(s => new long[] { s.From, s.To })])).OnlyEnforceIf(when);
    }

    private static bool Welcome(PatientHome home, Nurse nurse) => !home.RefusedNurses.Contains(nurse.Id)
        && home.RequiredTraits.All(nurse.Traits.Contains) && !home.ExcludedTraits.Any(nurse.Traits.Contains);
}
