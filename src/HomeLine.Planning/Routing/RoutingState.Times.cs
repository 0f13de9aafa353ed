namespace HomeLine.Planning.Routing;

/// <summary>Earliest and latest times along a route, and its time segments.</summary>
internal sealed partial class RoutingState
{
    /// <summary>Recomputes a whole route.</summary>
    public void Retime(int vehicle)
    {
        RouteHead route = Routes[vehicle];
        VehicleKind kind = _model.Problem.Kinds[route.Kind];
        int[] time = _model.Time;
        int places = _model.Places;
        ref Link link = ref Links[route.First];
        link.Ready = kind.Opens;
        for (int v = link.Next; v >= 0;)
        {
            ref Link next = ref Cells.At(Links, v);
            int arrive = link.Ready + Cells.At(time, (link.Place * places) + next.Place);
            next.Ready = v == route.Last ? arrive : Math.Max(arrive, Cells.At(_model.Of, v).Opens) + Cells.At(_model.Of, v).Service;
            link = ref next;
            v = link.Next;
        }

        link.Late = kind.Closes;
        for (int v = link.Prev; v >= 0;)
        {
            ref Link before = ref Cells.At(Links, v);
            int latest = link.Late - Cells.At(time, (before.Place * places) + link.Place);
            before.Late = v == route.First ? latest : Math.Min(latest - Cells.At(_model.Of, v).Service, Cells.At(_model.Of, v).Closes);
            link = ref before;
            v = link.Prev;
        }

        if (_model.UsesDuration) Resegment(vehicle);
    }

    /// <summary>Carries the times of a new visit forward and backward until nothing changes.</summary>
    private void Spread(int visit)
    {
        int[] time = _model.Time;
        int places = _model.Places;
        ref Link link = ref Links[visit];
        RouteHead route = Routes[link.Route];
        ref Link before = ref Links[link.Prev];
        ref VisitFacts fact = ref Cells.At(_model.Of, visit);
        link.Ready = Math.Max(before.Ready + time[(before.Place * places) + link.Place], fact.Opens) + fact.Service;
        link.Late = Math.Min(Links[link.Next].Late - time[(link.Place * places) + Links[link.Next].Place] - fact.Service, fact.Closes);
        SpreadForward(ref link, route.Last);
        SpreadBackward(ref Links[visit], route.First);
    }

    private void SpreadForward(ref Link link, int last)
    {
        int[] time = _model.Time;
        int places = _model.Places;
        for (int v = link.Next; v >= 0; v = link.Next)
        {
            ref Link next = ref Cells.At(Links, v);
            int ready = link.Ready + Cells.At(time, (link.Place * places) + next.Place);
            if (v != last) ready = Math.Max(ready, Cells.At(_model.Of, v).Opens) + Cells.At(_model.Of, v).Service;
            if (ready == next.Ready) return;
            next.Ready = ready;
            link = ref next;
        }
    }

    private void SpreadBackward(ref Link link, int first)
    {
        int[] time = _model.Time;
        int places = _model.Places;
        for (int v = link.Prev; v >= 0; v = link.Prev)
        {
            ref Link before = ref Cells.At(Links, v);
            int late = link.Late - Cells.At(time, (before.Place * places) + link.Place);
            if (v != first) late = Math.Min(late - Cells.At(_model.Of, v).Service, Cells.At(_model.Of, v).Closes);
            if (late == before.Late) return;
            before.Late = late;
            link = ref before;
        }
    }

    /// <summary>Recomputes the time segments of a route and what its duration costs.</summary>
    private void Resegment(int vehicle)
    {
        ref RouteHead route = ref Routes[vehicle];
        VehicleKind kind = _model.Problem.Kinds[route.Kind];
        var hours = TimeSegment.Of(0, kind.Opens, kind.Closes);
        Fore[route.First] = hours;
        for (int before = route.First, v = Links[before].Next; v >= 0; before = v, v = Links[v].Next)
            TimeSegment.TryJoin(Fore[before], TravelTo(before, v), v == route.Last ? hours : Own(v), out Fore[v]);
        Back[route.Last] = hours;
        for (int after = route.Last, v = Links[after].Prev; v >= 0; after = v, v = Links[v].Prev)
            TimeSegment.TryJoin(v == route.First ? hours : Own(v), TravelTo(v, after), Back[after], out Back[v]);
        if (!_model.Problem.DurationIsCost) return;
        int duration = route.Count == 0 ? 0 : Fore[route.Last].Duration;
        Total += duration - route.PricedDuration;
        route.PricedDuration = duration;
    }

    public TimeSegment Own(int visit) => TimeSegment.Of(_model.Of[visit].Service, _model.Of[visit].Opens, _model.Of[visit].Closes);

    private int TravelTo(int from, int to) => _model.Time[(Links[from].Place * _model.Places) + Links[to].Place];
}
