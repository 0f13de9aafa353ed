using Google.OrTools.Sat;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Proof;

/// <summary>The six tiers of the score as linear expressions, from the table in docs/planning.md.</summary>
internal sealed class ExactPoints
{
    private readonly CpModel _model;
    private readonly WeekProblem _problem;
    private readonly ExactVisits _visits;
    private readonly LinearExprBuilder _critical = LinearExpr.NewBuilder(), _risk = LinearExpr.NewBuilder(), _duties = LinearExpr.NewBuilder();

    public ExactPoints(CpModel model, WeekProblem problem, ExactVisits visits, ExactNurseDay[] days)
    {
        (_model, _problem, _visits) = (model, problem, visits);
        for (int t = 0; t < problem.Tasks.Length; t++) Task(t);
        for (int p = 0; p < problem.Patients.Length; p++) Orders(p);
        PlanningRules rules = problem.Rules;
        LinearExpr work = LinearExpr.Sum(days.Select(r => (rules.VisitPriceMinutes * r.Visits) + r.Driving + r.Wait + (rules.OvertimeFactor * (LinearExpr)r.Overtime)));
        Tiers = [_critical, _risk, _duties, work, People(days), Unused()];
    }

    public LinearExpr[] Tiers { get; }

    /// <summary>What a task costs: one term for each stretch of starts with the same points, and for each day the care before it may have been done on.</summary>
    private void Task(int t)
    {
        CareTask task = _problem.Tasks[t];
        int before = task.After is null ? -1 : _problem.Tasks.IndexOf(_problem.Tasks.SingleOrDefault(o => o.Id == task.After)!);
        bool counts = before >= 0 && task.MaxGap != int.MaxValue;
        if (counts && !task.GapInDays) throw new NotSupportedException("The most minutes of a chain are not in this model.");
        for (int d = 0; d < _problem.DayCount; d++)
        {
            var stretches = new List<ILiteral> { _visits.Does[t, d].Not() };
            if (!counts || d == 0) Stretches(t, d, task.LateFrom, null, stretches);
            else
            {
                Stretches(t, d, task.LateFrom, before, stretches);
                for (int b = 0; b < _problem.DayCount; b++)
                    Stretches(t, d, Math.Min(task.LateFrom, (b + (task.MaxGap / 1440) + 1) * 1440), before, stretches, b);
            }

            _model.AddExactlyOne(stretches);
            if (before >= 0) Apart(task, t, before, d);
        }

        long unmet = Points(task, Math.Max(0, (1440L * _problem.DayCount) - task.LateFrom) + (1440L * (_problem.DayCount + 1)));
        Late(task).AddTerm(_visits.Done(t), -unmet);
        Late(task).Add(unmet);
    }

    private LinearExprBuilder Late(CareTask task) => task.Critical ? _critical : _risk;

    private void Stretches(int t, int day, int lateFrom, int? before, List<ILiteral> into, int? beforeDay = null)
    {
        CareTask task = _problem.Tasks[t];
        long first = 1440L * day, last = first + 1439, step = task.Critical ? _problem.Rules.CriticalStepMinutes : 1440;
        var edges = new SortedSet<long> { first };
        for (long edge = lateFrom; edge <= last; edge += step)
        {
            if (edge > first) edges.Add(edge);
        }

        if (task.TargetBy is { } target && target + 1 > first && target < last) edges.Add(target + 1);
        long[] from = [.. edges];
        for (int i = 0; i < from.Length; i++)
        {
            BoolVar here = _model.NewBoolVar("");
            into.Add(here);
            _model.AddLinearConstraint(_visits.Start[_visits.PatientOf[t], day], from[i], i + 1 < from.Length ? from[i + 1] - 1 : last).OnlyEnforceIf(here);
            if (before is { } b && beforeDay is { } on) _model.AddImplication(here, _visits.Does[b, on]);
            else if (before is { } undone) _model.Add(_visits.Done(undone) == 0).OnlyEnforceIf(here);
            Late(task).AddTerm(here, from[i] < lateFrom ? 0 : Points(task, from[i] - lateFrom));
            if (from[i] > (task.TargetBy ?? int.MaxValue)) _duties.AddTerm(here, task.Weight);
        }
    }

    /// <summary>Least separation from the care before.</summary>
    private void Apart(CareTask task, int t, int before, int day)
    {
        for (int b = 0; b < _problem.DayCount; b++)
        {
            ILiteral[] both = [_visits.Does[before, b], _visits.Does[t, day]];
            if (!task.GapInDays)
                _model.Add(_visits.Start[_visits.PatientOf[t], day] - _visits.Start[_visits.PatientOf[before], b] >= task.MinGap).OnlyEnforceIf(both);
            else if ((day - b) * 1440 < task.MinGap) _model.AddBoolOr([both[0].Not(), both[1].Not()]);
        }
    }

    private long Points(CareTask task, long late)
    {
        if (task.Critical) return _problem.Rules.CriticalStepPoints * (long)task.Weight * (1 + (late / _problem.Rules.CriticalStepMinutes));
        long k = 1 + (late / 1440);
        return _problem.Rules.LateStepPoints * task.Weight * (k * (k + 1) / 2);
    }

    private void Orders(int p)
    {
        foreach (WeekAllowance allowance in _problem.Patients[p].Allowances)
        {
            var counted = new List<BoolVar>();
            for (int d = allowance.FirstDay; d <= Math.Min(allowance.LastDay, _problem.DayCount - 1); d++)
            {
                BoolVar counts = _model.NewBoolVar("");
                counted.Add(counts);
                foreach (int t in _visits.TasksOf(p).Where(t => !_problem.Tasks[t].Safety)) _model.AddImplication(_visits.Does[t, d], counts);
            }

            IntVar beyond = _model.NewIntVar(0, counted.Count, "");
            _model.Add(beyond >= LinearExpr.Sum(counted) - allowance.Visits);
            _duties.AddTerm(beyond, _problem.Rules.AllowanceExceededPoints);
        }
    }

    private LinearExprBuilder People(ExactNurseDay[] days)
    {
        LinearExprBuilder people = LinearExpr.NewBuilder();
        SoftPoints soft = _problem.Rules.Soft;
        for (int p = 0; p < _problem.Patients.Length; p++)
        {
            PatientHome home = _problem.Patients[p];
            var faces = new List<BoolVar>();
            foreach (var ofNurse in days.GroupBy(r => r.Nurse.Id))
            {
                BoolVar face = _model.NewBoolVar("");
                faces.Add(face);
                foreach (ExactNurseDay day in ofNurse)
                {
                    _model.AddImplication(day.Care[p], face);
                    int known = home.KnownNurses.IndexOf(day.Nurse.Id), wishes = home.PreferredTraits.Count(w => !day.Nurse.Traits.Contains(w));
                    int stranger = home.KnownNurses.IsEmpty || known == 0 ? 0 : known > 0 ? soft.BackupNurse : soft.UnknownNurse;
                    people.AddTerm(day.Care[p], stranger + (wishes * soft.MissingWish));
                }
            }

            IntVar further = _model.NewIntVar(0, faces.Count, "");
            _model.Add(further >= LinearExpr.Sum(faces) - 1);
            people.AddTerm(further, soft.ExtraFace);
        }

        foreach (ExactNurseDay day in days)
        {
            IntVar busy = _model.NewIntVar(0, 1440, ""), square = _model.NewIntVar(0, 1440 * 1440, ""), load = _model.NewIntVar(0, 1440 * 1440, "");
            _model.Add(busy == day.Busy);
            _model.AddMultiplicationEquality(square, busy, busy);
            _model.AddDivisionEquality(load, square, soft.LoadDivisor);
            people.AddTerm(load, 1);
        }

        return people;
    }

    private LinearExprBuilder Unused()
    {
        LinearExprBuilder unused = LinearExpr.NewBuilder();
        for (int t = 0; t < _problem.Tasks.Length; t++)
        {
            CareTask task = _problem.Tasks[t];
            for (int d = 0; d < _problem.DayCount; d++)
            {
                int lastDay = task.LateFrom == int.MaxValue ? int.MinValue : (int)Math.Floor((task.LateFrom - 1) / 1440.0);
                unused.AddTerm(_visits.Does[t, d], Math.Max(0L, (long)lastDay - d) + (task.UsualDay is { } usual && usual != d ? 1 : 0));
            }
        }

        return unused;
    }
}
