namespace HomeLine.Planning.Routing;

/// <summary>
/// First-improvement descent over the routes a move touched: relocate one to three visits, swap two, exchange tails (2-opt*). Each try costs constant time, because every
/// link knows its earliest departure and its latest start. Runs inside a move, so it is kept or undone with it.
/// </summary>
internal sealed class LocalSearch
{
    /// <summary>Own limits: neighbours tried for each visit, longest stretch relocated, improvements in one descent.</summary>
    private const int NearTried = 20, LongestStretch = 3, MostSteps = 200;

    private readonly RoutingState _state;
    private readonly RoutingModel _model;
    private readonly Link[] _links;
    private readonly int[][] _near;
    private readonly int[] _tail;
    private readonly int[] _otherTail;
    private readonly int[] _queue;

    public LocalSearch(RoutingState state)
    {
        _state = state;
        _model = state.Model;
        _links = state.Links;
        _near = Neighbours.ByCostAndTime(_model, Math.Min(NearTried, Math.Max(0, _model.Requests - 1)));
        _tail = new int[_model.Visits];
        _otherTail = new int[_model.Visits];
        _queue = new int[_model.Visits];
    }

    /// <summary>Whether the problem is one these moves understand: durations would need segments at both ends of every try.</summary>
    public bool Applies => !_model.UsesDuration;

    /// <summary>Descends until no visit of a touched route finds a better place.</summary>
    public void Descend()
    {
        for (int steps = 0; steps < MostSteps; steps++)
            if (!ImproveOnce()) return;
    }

    private bool ImproveOnce()
    {
        int queued = 0;
        for (int i = 0; i < _state.TouchedCount; i++)
        {
            RouteHead route = _state.Routes[_state.TouchedAt(i)];
            int load = 0;
            for (int v = _links[route.First].Next; v != route.Last; v = _links[v].Next)
            {
                load += _model.Of[v].Demand;
                _links[v].Load = load;
                _queue[queued++] = v;
            }
        }

        for (int i = 0; i < queued; i++)
            if (ImproveAround(_queue[i])) return true;
        return false;
    }

    private bool ImproveAround(int visit)
    {
        int offset = _model.Of[visit].Day * _model.Requests;
        foreach (int near in _near[_model.Of[visit].Request])
        {
            int other = near + offset;
            int vehicle = _links[other].Route;
            if (vehicle < 0 || vehicle == _links[visit].Route) continue;
            if (Relocate(visit, other) || Relocate(visit, _links[other].Prev)) return true;
            if (Swap(visit, _links[other].Next) || Swap(visit, _links[other].Prev)) return true;
            if (_state.IsTouched(vehicle) && ExchangeTails(visit, other)) return true;
        }

        return false;
    }

    /// <summary>A stretch that begins at a visit goes behind a link of another route.</summary>
    private bool Relocate(int visit, int behind)
    {
        int before = _links[visit].Prev, from = _links[visit].Route, to = _links[behind].Route;
        if (to == from) return false;
        int after = _links[behind].Next, end = visit, load = 0, ready = Leave(_links[behind].Ready + Time(behind, visit), visit, out bool fits);
        for (int length = 1; length <= LongestStretch && fits && MayServe(to, end); length++)
        {
            load += _model.Of[end].Demand;
            int next = _links[end].Next;
            long gain = (long)_links[before].Edge + _links[end].Edge - Gap(from, before, next, length) + _links[behind].Edge - Cost(behind, visit) - Cost(end, after);
            if (gain > 0 && CanCarry(to, load) && ready + Time(end, after) <= _links[after].Late && Closes(before, next))
            {
                Move(visit, length, from, behind);
                return true;
            }

            if (next == _state.Routes[from].Last) return false;
            ready = Leave(ready + Time(end, next), next, out fits);
            end = next;
        }

        return false;
    }

    private void Move(int visit, int length, int from, int behind)
    {
        for (int i = 0, v = visit; i < length; i++)
        {
            _tail[i] = v;
            v = _links[v].Next;
        }

        for (int i = 0; i < length; i++) _state.Remove(_tail[i]);
        _state.Retime(from);
        for (int i = 0; i < length; i++)
        {
            _state.Insert(_tail[i], behind);
            behind = _tail[i];
        }
    }

    /// <summary>Two visits of different routes change places.</summary>
    private bool Swap(int a, int b)
    {
        if (b >= _model.Visits) return false;
        int from = _links[a].Route, to = _links[b].Route;
        if (from == to) return false;
        int beforeA = _links[a].Prev, afterA = _links[a].Next, beforeB = _links[b].Prev, afterB = _links[b].Next;
        long gain = (long)_links[beforeA].Edge + _links[a].Edge + _links[beforeB].Edge + _links[b].Edge
            - Cost(beforeA, b) - Cost(b, afterA) - Cost(beforeB, a) - Cost(a, afterB);
        if (gain <= 0 || !InTime(beforeA, b, afterA) || !InTime(beforeB, a, afterB)) return false;
        int more = _model.Of[b].Demand - _model.Of[a].Demand;
        if (!CanCarry(from, more) || !CanCarry(to, -more) || !MayServe(from, b) || !MayServe(to, a)) return false;
        _state.Remove(a);
        _state.Remove(b);
        _state.Retime(from);
        _state.Retime(to);
        _state.Insert(b, beforeA);
        _state.Insert(a, beforeB);
        return true;
    }

    /// <summary>A visit and the tail from the other visit on are joined; so are what is left of both routes.</summary>
    private bool ExchangeTails(int visit, int other)
    {
        int from = _links[visit].Route, to = _links[other].Route;
        if (_state.Routes[from].Kind != _state.Routes[to].Kind) return false;
        int next = _links[visit].Next, before = _links[other].Prev;
        bool bothEmpty = before == _state.Routes[to].First && next == _state.Routes[from].Last;
        long gain = (long)_links[visit].Edge + _links[before].Edge - Cost(visit, other) - (bothEmpty ? 0 : Cost(before, next));
        if (gain <= 0) return false;
        if (_links[visit].Ready + Time(visit, other) > _links[other].Late || _links[before].Ready + Time(before, next) > _links[next].Late) return false;
        int tail = _state.Routes[from].Load - _links[visit].Load, otherHead = before == _state.Routes[to].First ? 0 : _links[before].Load;
        int joined = _links[visit].Load + _state.Routes[to].Load - otherHead, rest = otherHead + tail;
        if (joined > _state.Routes[from].Capacity || rest > _state.Routes[to].Capacity) return false;
        int moved = TakeTail(next, _state.Routes[from].Last, _tail), otherMoved = TakeTail(other, _state.Routes[to].Last, _otherTail);
        _state.Retime(from);
        _state.Retime(to);
        Append(_otherTail, otherMoved, visit);
        Append(_tail, moved, before);
        return true;
    }

    private int TakeTail(int visit, int last, int[] tail)
    {
        int count = 0;
        while (visit != last)
        {
            int next = _links[visit].Next;
            tail[count++] = visit;
            _state.Remove(visit);
            visit = next;
        }

        return count;
    }

    private void Append(int[] tail, int count, int behind)
    {
        for (int i = 0; i < count; i++)
        {
            _state.Insert(tail[i], behind);
            behind = tail[i];
        }
    }

    private bool CanCarry(int vehicle, int more) => more <= 0 || _state.Routes[vehicle].Load + more <= _state.Routes[vehicle].Capacity;

    private bool MayServe(int vehicle, int visit) => _model.EverybodyEligible
        || _model.Eligible[(_model.Of[visit].Request * _model.Problem.Kinds.Length) + _state.Routes[vehicle].Kind];

    // An emptied route costs nothing.
    private int Gap(int vehicle, int before, int after, int taken) => _state.Routes[vehicle].Count == taken ? 0 : Cost(before, after);

    private bool Closes(int before, int after) => _links[before].Ready + Time(before, after) <= _links[after].Late;

    private bool InTime(int before, int visit, int after)
    {
        int ready = Leave(_links[before].Ready + Time(before, visit), visit, out bool fits);
        return fits && ready + Time(visit, after) <= _links[after].Late;
    }

    private int Leave(int arrive, int visit, out bool fits)
    {
        ref VisitFacts fact = ref _model.Of[visit];
        fits = arrive <= fact.Closes;
        return Math.Max(arrive, fact.Opens) + fact.Service;
    }

    private int Cost(int from, int to) => Cells.At(_model.Cost, (_links[from].Place * _model.Places) + _links[to].Place);

    private int Time(int from, int to) => Cells.At(_model.Time, (_links[from].Place * _model.Places) + _links[to].Place);
}
