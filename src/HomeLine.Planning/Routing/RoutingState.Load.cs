namespace HomeLine.Planning.Routing;

/// <summary>Taking over given routes.</summary>
internal sealed partial class RoutingState
{
    /// <summary>
    /// Takes over a plan as far as it keeps the rules: a route that does not is left out with its requests, and so is a request whose days are
    /// none of its patterns.
    /// </summary>
    public void TakeOver(RoutingPlan plan)
    {
        Clear();
        Begin();
        var days = new int[_model.Requests];
        foreach (PlannedRoute route in plan.Routes) TakeOver(route, days);
        for (int request = 0; request < _model.Requests; request++)
        {
            if (days[request] == 0) continue;
            if (_model.Patterns[request].Contains(days[request])) Choose(request, days[request]);
            else TakeOut(request);
        }

        Begin();
    }

    public void Clear()
    {
        Begin();
        for (int request = 0; request < _model.Requests; request++)
        {
            TakeOut(request);
            Choose(request, 0);
        }

        RetimeTouched();
        Begin();
    }

    private void TakeOut(int request)
    {
        for (int day = 0; day < _model.Days; day++)
        {
            int visit = (day * _model.Requests) + request;
            if (Links[visit].Route < 0) continue;
            int vehicle = Links[visit].Route;
            Remove(visit);
            Retime(vehicle);
        }
    }

    private void TakeOver(PlannedRoute planned, int[] days)
    {
        if (planned.Kind < 0 || planned.Kind >= _model.Problem.Kinds.Length) return;
        int vehicle = _used.IdleOf(planned.Kind), day = _model.Problem.Kinds[planned.Kind].Day;
        if (vehicle < 0) return;
        int behind = Routes[vehicle].First;
        foreach (int request in planned.Requests)
        {
            if (request < 0 || request >= _model.Requests || Links[(day * _model.Requests) + request].Route >= 0) continue;
            int visit = (day * _model.Requests) + request;
            Insert(visit, behind);
            behind = visit;
            days[request] |= 1 << day;
        }

        if (Keeps(vehicle)) return;
        foreach (int request in planned.Requests)
        {
            int visit = (day * _model.Requests) + request;
            if (Links[visit].Route != vehicle) continue;
            Remove(visit);
            days[request] &= ~(1 << day);
        }

        Retime(vehicle);
    }

    /// <summary>Whether a route keeps windows, capacity, longest duration and eligibility.</summary>
    private bool Keeps(int vehicle)
    {
        ref RouteHead route = ref Routes[vehicle];
        if (route.Load > route.Capacity) return false;
        for (int v = route.First; v >= 0; v = Links[v].Next)
        {
            int service = v < _model.Visits ? _model.Of[v].Service : 0;
            if (Links[v].Ready - service > Links[v].Late) return false;
            if (v < _model.Visits && !_model.Eligible[(_model.Of[v].Request * _model.Problem.Kinds.Length) + route.Kind]) return false;
        }

        return !_model.UsesDuration || DurationOf(vehicle) <= route.LongestDuration;
    }

    private int DurationOf(int vehicle) => Routes[vehicle].Count == 0 ? 0 : Fore[Routes[vehicle].Last].Duration;
}
