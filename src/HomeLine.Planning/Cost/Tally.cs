using HomeLine.Planning.Plans;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Cost;

/// <summary>Keeps the score of the plan under search current: after a round only the touched patients and nurse-days are counted anew.</summary>
internal sealed class Tally
{
    private readonly CompiledWeek _week;
    private readonly SearchScore _score;
    private readonly PatientPart[] _patients, _patientsNew;
    private readonly RoutePart[] _routes, _routesNew;
    private readonly TouchedSet _touched;
    private ScoreSum _sum, _sumNew;

    public Tally(CompiledWeek week, SearchScore score)
    {
        _week = week;
        _score = score;
        _patients = new PatientPart[week.PatientCount];
        _patientsNew = new PatientPart[week.PatientCount];
        _routes = new RoutePart[week.Routes.Count];
        _routesNew = new RoutePart[week.Routes.Count];
        _touched = new TouchedSet(week.PatientCount);
    }

    public PlanScore Score => _sum.Score;

    /// <summary>Counts everything.</summary>
    public void Recount(WeekState state)
    {
        _sum = default;
        for (int patient = 0; patient < _patients.Length; patient++) _sum.Add(_patients[patient] = _score.OfPatient(state, patient));
        for (int route = 0; route < _routes.Length; route++) _sum.Add(_routes[route] = _score.OfRoute(state, route));
    }

    /// <summary>The score after the round under way.</summary>
    public PlanScore After(WeekState state, Journal journal)
    {
        _sumNew = _sum;
        _touched.Clear();
        foreach (int unit in journal.Units.Items) Touch(_week.Units.Patient[unit]);
        foreach (int slot in journal.Slots.Items)
        {
            if (Matters(state, journal.Before, slot)) Touch(state.Patient[slot]);
        }

        foreach (int patient in _touched.Items)
        {
            _sumNew.Take(_patients[patient]);
            _sumNew.Add(_patientsNew[patient] = _score.OfPatient(state, patient));
        }

        foreach (int route in journal.Routes.Items)
        {
            _sumNew.Take(_routes[route]);
            _sumNew.Add(_routesNew[route] = _score.OfRoute(state, route));
        }

        return _sumNew.Score;
    }

    /// <summary>The round stands.</summary>
    public void Accept(Journal journal)
    {
        _sum = _sumNew;
        foreach (int patient in _touched.Items) _patients[patient] = _patientsNew[patient];
        foreach (int route in journal.Routes.Items) _routes[route] = _routesNew[route];
    }

    /// <summary>A start that only moves while nothing is late by it changes no points.</summary>
    private static bool Matters(WeekState now, WeekState before, int slot) =>
        now.RouteA[slot] != before.RouteA[slot] || now.Chained[slot] || before.Chained[slot]
        || now.Start[slot] >= now.LateFrom[slot] || before.Start[slot] >= before.LateFrom[slot];

    private void Touch(int patient)
    {
        if (!_touched.Add(patient)) return;
        foreach (int follower in _week.FollowersElsewhere[patient]) _touched.Add(follower);
    }
}
