using Google.OrTools.Sat;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Tests.Proof;

/// <summary>One nurse's day as a tour from home to home, with its break and its minutes.</summary>
internal sealed class ExactNurseDay
{
    private readonly CpModel _model;
    private readonly WeekProblem _problem;
    private readonly ExactVisits _visits;
    private readonly IntVar _first, _leave, _stay;
    private readonly BoolVar _used;
    private readonly List<(BoolVar Arc, int Minutes)> _between = [], _legs = [], _wayHome = [];
    private readonly List<BoolVar> _breaks = [];
    private readonly BoolVar _before;

    public ExactNurseDay(CpModel model, WeekProblem problem, ExactVisits visits, Nurse nurse, Shift shift)
    {
        (_model, _problem, _visits, Nurse, Shift) = (model, problem, visits, nurse, shift);
        int patients = problem.Patients.Length, first = shift.Day * 1440;
        Care = [.. Enumerable.Range(0, patients).Select(p => model.NewBoolVar($"care {nurse.Id} {shift.Day} {p}"))];
        Second = [.. Enumerable.Range(0, patients).Select(p => model.NewBoolVar($"second {nurse.Id} {shift.Day} {p}"))];
        _used = model.NewBoolVar("");
        _before = model.NewBoolVar("");
        _first = model.NewIntVar(first, first + 2880, "");
        _leave = model.NewIntVar(first, first + 2880, "");
        _stay = model.NewIntVar(0, 2880, "");
        Back = model.NewIntVar(first, first + 2880, "");
        Overtime = model.NewIntVar(0, 1440, "");
        Tour();
        Stay();
        Break();
        model.Add(Back <= shift.OvertimeTo).OnlyEnforceIf(_used);
        model.Add(Overtime >= Back - shift.To).OnlyEnforceIf(_used);
        model.Add(Visits <= nurse.MaxVisitsADay);
    }

    public Nurse Nurse { get; }

    public Shift Shift { get; }

    /// <summary>By patient: she does the care.</summary>
    public BoolVar[] Care { get; }

    /// <summary>By patient: she is the second person.</summary>
    public BoolVar[] Second { get; }

    public IntVar Back { get; }

    public IntVar Overtime { get; }

    public LinearExpr Visits => LinearExpr.Sum(Care.Concat(Second));

    public LinearExpr Driving => LinearExpr.Sum(_legs.Select(l => l.Minutes * (LinearExpr)l.Arc));

    /// <summary>From the first start to leaving the last home, less what she does in between.</summary>
    public LinearExpr Wait => _leave - _first - _stay - (_problem.Rules.DocumentationMinutes * Visits)
        - LinearExpr.Sum(_between.Select(l => l.Minutes * (LinearExpr)l.Arc)) - LinearExpr.Sum(_breaks.Select(b => Shift.LunchMinutes * (LinearExpr)b));

    public LinearExpr Busy => _stay + (_problem.Rules.DocumentationMinutes * Visits) + Driving;

    public LinearExpr Present(int patient) => Care[patient] + (LinearExpr)Second[patient];

    private LinearExpr LeaveOf(int patient) =>
        _visits.Start[patient, Shift.Day] + _visits.Minutes[patient, Shift.Day] + _problem.Rules.DocumentationMinutes;

    private void Tour()
    {
        CircuitConstraint tour = _model.AddCircuit();
        tour.AddArc(0, 0, _used.Not());
        _model.Add(_first == Shift.From).OnlyEnforceIf(_used.Not());
        _model.Add(_leave == Shift.From).OnlyEnforceIf(_used.Not());
        for (int i = 0; i < Care.Length; i++)
        {
            BoolVar here = _model.NewBoolVar("");
            _model.Add(Present(i) == here);
            tour.AddArc(i + 1, i + 1, here.Not());
            FromHome(tour, i);
            ToHome(tour, i);
            for (int j = 0; j < Care.Length; j++)
            {
                if (j != i) Between(tour, i, j);
            }
        }
    }

    private void FromHome(CircuitConstraint tour, int i)
    {
        BoolVar arc = _model.NewBoolVar("");
        int way = _problem.Travel.Minutes(Nurse.Home, _problem.Patients[i].Place);
        tour.AddArc(0, i + 1, arc);
        _legs.Add((arc, way));
        _model.Add(_first == _visits.Start[i, Shift.Day]).OnlyEnforceIf(arc);
        _model.Add(_first >= Shift.From + way).OnlyEnforceIf(arc);
        _model.Add(_first >= Shift.LunchFrom + Shift.LunchMinutes + way).OnlyEnforceIf([arc, _before]);
        _model.Add(_first <= Shift.LunchFrom + Shift.LunchMinutes + way - 1).OnlyEnforceIf([arc, _before.Not()]);
    }

    private void ToHome(CircuitConstraint tour, int i)
    {
        BoolVar arc = _model.NewBoolVar("");
        int way = _problem.Travel.Minutes(_problem.Patients[i].Place, Nurse.Home);
        tour.AddArc(i + 1, 0, arc);
        _legs.Add((arc, way));
        _wayHome.Add((arc, way));
        _model.Add(_leave == LeaveOf(i)).OnlyEnforceIf(arc);
        _model.Add(Back >= _leave + way).OnlyEnforceIf(arc);
    }

    private void Between(CircuitConstraint tour, int i, int j)
    {
        BoolVar arc = _model.NewBoolVar("");
        int way = _problem.Travel.Minutes(_problem.Patients[i].Place, _problem.Patients[j].Place);
        tour.AddArc(i + 1, j + 1, arc);
        _legs.Add((arc, way));
        _between.Add((arc, way));
        IntVar start = _visits.Start[j, Shift.Day];
        _model.Add(start >= LeaveOf(i) + way).OnlyEnforceIf(arc);
        if (Shift.LunchMinutes == 0) return;
        BoolVar pause = _model.NewBoolVar("");
        _breaks.Add(pause);
        _model.AddImplication(pause, arc);
        _model.AddImplication(pause, _before.Not());
        _model.Add(start >= LeaveOf(i) + way + Shift.LunchMinutes).OnlyEnforceIf(pause);
        _model.Add(start >= Shift.LunchFrom + Shift.LunchMinutes).OnlyEnforceIf(pause);
        _model.Add(LeaveOf(i) <= Shift.LunchTo).OnlyEnforceIf(pause);
    }

    private void Stay()
    {
        var minutes = new List<IntVar>();
        for (int p = 0; p < Care.Length; p++)
        {
            IntVar here = _model.NewIntVar(0, 1440, "");
            foreach (BoolVar seat in new[] { Care[p], Second[p] }) _model.Add(here == _visits.Minutes[p, Shift.Day]).OnlyEnforceIf(seat);
            _model.Add(here == 0).OnlyEnforceIf([Care[p].Not(), Second[p].Not()]);
            minutes.Add(here);
        }

        _model.Add(_stay == LinearExpr.Sum(minutes));
    }

    /// <summary>Before leaving home, in one gap, after coming home, or on the way home.</summary>
    private void Break()
    {
        if (Shift.LunchMinutes == 0) return;
        BoolVar after = _model.NewBoolVar(""), onTheWay = _model.NewBoolVar("");
        _model.AddExactlyOne([_used.Not(), _before, after, onTheWay, .. _breaks]);
        _model.Add(Back <= Shift.LunchTo).OnlyEnforceIf(after);
        _model.Add(_leave <= Shift.LunchTo).OnlyEnforceIf(onTheWay);
        foreach ((BoolVar arc, int way) in _wayHome) _model.Add(Back >= _leave + way + Shift.LunchMinutes).OnlyEnforceIf([onTheWay, arc]);
    }
}
