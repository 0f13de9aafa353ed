using HomeLine.Planning.Cost;

namespace HomeLine.Planning.Search;

/// <summary>What a place costs besides the road: visit price, orders, continuity, faces, wishes, unused life, less what being unmet costs.</summary>
internal sealed class PlacePrice(CompiledWeek week, SearchScore score)
{
    private readonly int[] _faces = new int[week.Days];
    private int _unit, _patient, _faceCount;
    private double _unmet;

    public void Begin(WeekState state, int unit)
    {
        _unit = unit;
        _patient = week.Units.Patient[unit];
        _unmet = 0;
        foreach (int task in week.Units.Tasks[unit]) _unmet += week.Tasks.UnmetPoints[task] * week.Tasks.PointPrice[task];
        _faceCount = 0;
        for (int day = 0; day < week.Days; day++)
        {
            int route = state.RouteA[week.Slot(_patient, day)];
            if (route >= 0) _faces[_faceCount++] = week.Routes.Nurse[route];
        }
    }

    public double OfDay(WeekState state, int day)
    {
        double cost = -_unmet;
        foreach (int task in week.Units.Tasks[_unit]) cost += score.UnusedLife(task, day) * Blend.UnusedLife;
        return cost;
    }

    public double OfNewVisit(WeekState state, int day)
    {
        int crew = week.People.Crew[_patient] > 1 ? 2 : 1;
        return (crew * week.Problem.Rules.VisitPriceMinutes)
            + (Blend.Duty * week.Problem.Rules.AllowanceExceededPoints * BeyondOrders(state, week.Slot(_patient, day)));
    }

    public double OfNurse(int nurse)
    {
        double cost = week.People.VisitPoints[(_patient * week.NurseCount) + nurse] * Blend.People;
        if (_faceCount > 0 && !_faces.AsSpan(0, _faceCount).Contains(nurse)) cost += week.Problem.Rules.Soft.ExtraFace * Blend.People;
        return cost;
    }

    /// <summary>What beginning a nurse-day costs when others are more due for it.</summary>
    public double OfTurn(WeekState state, int route) => state.Visits[route] == 0 ? week.Routes.Turn[route] * Blend.People : 0;

    /// <summary>Visits beyond the orders that the trial visit would add.</summary>
    private int BeyondOrders(WeekState state, int slot)
    {
        if (week.Problem.Patients[_patient].Allowances.IsEmpty) return 0;
        int before = score.BeyondOrders(state, _patient);
        state.FirstUnit[slot] = _unit;
        int after = score.BeyondOrders(state, _patient);
        state.FirstUnit[slot] = WeekState.None;
        return after - before;
    }
}
