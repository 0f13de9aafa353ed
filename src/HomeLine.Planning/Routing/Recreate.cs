namespace HomeLine.Planning.Routing;

/// <summary>Puts requests back one after another, each where it adds least; also those that were left out before.</summary>
internal sealed class Recreate
{
    /// <summary>Own limit: more left-out requests than this are tried in turns, so that a hopeless problem does not slow every move.</summary>
    private const int MostAbsent = 12;

    private readonly RoutingState _state;
    private readonly RoutingModel _model;
    private readonly Insertion _insertion;
    private readonly InsertionOrder _order;
    private readonly Chance _chance;
    private readonly int[] _waiting;
    private readonly Place[] _ofDay;
    private int _count;

    public Recreate(RoutingState state, Insertion insertion, Chance chance)
    {
        _state = state;
        _model = state.Model;
        _insertion = insertion;
        _order = new InsertionOrder(_model, chance);
        _chance = chance;
        _waiting = new int[_model.Requests + MostAbsent];
        _ofDay = new Place[_model.Days];
    }

    /// <summary>Everything that is left out, for a first plan.</summary>
    /// <param name="patience">Above 1: how much dearer than elsewhere the first visit of an idle vehicle may be. Too many routes are soon joined, too few hardly ever cut.</param>
    public void PutInAll(double patience)
    {
        _insertion.Patience = patience;
        _count = _state.AbsentCount;
        Array.Copy(_state.Absent, _waiting, _count);
        _order.Sort(_waiting, _count);
        for (int i = 0; i < _count; i++) PutIn(_waiting[i]);
        _insertion.Patience = 1;
    }

    /// <summary>What a ruin took out, each visit on its day.</summary>
    public void PutBack(StringRuin ruin)
    {
        Collect(ruin);
        for (int i = 0; i < _count; i++)
        {
            int request = _waiting[i];
            if (!_state.IsServed(request) || _model.Days == 1) PutIn(request);
            else PutOnDay(request, ruin.Day);
        }
    }

    /// <summary>The same for one day, given up as soon as the plan is sure to be judged at the limit or above; then the move is not finished and must be undone.</summary>
    /// <returns>Whether everything was put in or left out at its price.</returns>
    public bool PutBackBelow(StringRuin ruin, double limit)
    {
        Collect(ruin);
        for (int i = 0; i < _count; i++)
        {
            int request = _waiting[i];
            double left = Math.Ceiling(limit) - _state.Judged;
            if (left <= 0) return false;
            Place place = _insertion.Best(request, (int)Math.Min(Math.Min(left, _model.LeavingOut[request]), int.MaxValue));
            if (place.Behind >= 0) _state.Insert(request, place.Behind);
            else if (_model.LeavingOut[request] < left) _state.Choose(request, 0);
            else return false;
        }

        return true;
    }

    private void Collect(StringRuin ruin)
    {
        _count = ruin.Count;
        for (int i = 0; i < _count; i++) _waiting[i] = _model.Of[ruin.Removed[i]].Request;
        AddAbsent();
        _order.Sort(_waiting, _count);
    }

    /// <summary>What a ruin took out, free to choose other days.</summary>
    public void PutBackAnyDay(StringRuin ruin)
    {
        _count = 0;
        for (int i = 0; i < ruin.Count; i++)
        {
            int request = _model.Of[ruin.Removed[i]].Request;
            if (Array.IndexOf(_waiting, request, 0, _count) >= 0) continue;
            _waiting[_count++] = request;
            TakeOutRest(request);
        }

        AddAbsent();
        _state.RetimeTouched();
        _order.Sort(_waiting, _count);
        for (int i = 0; i < _count; i++) PutIn(_waiting[i]);
    }

    private void AddAbsent()
    {
        int some = Math.Min(MostAbsent, _state.AbsentCount);
        int from = some < _state.AbsentCount ? _chance.Next(_state.AbsentCount) : 0;
        for (int i = 0; i < some; i++) _waiting[_count++] = _state.Absent[(from + i) % _state.AbsentCount];
    }

    private void PutIn(int request)
    {
        if (_model.Days > 1)
        {
            PutInPattern(request);
            return;
        }

        Place place = _insertion.Best(request);
        if (place.Behind < 0 || place.Added >= _model.LeavingOut[request])
        {
            _state.Choose(request, 0);
            return;
        }

        _state.Choose(request, 1);
        _state.Insert(request, place.Behind);
    }

    private void PutInPattern(int request)
    {
        int pattern = CheapestPattern(request);
        _state.Choose(request, pattern);
        for (int day = 0; day < _model.Days; day++)
            if ((pattern >> day & 1) != 0) _state.Insert((day * _model.Requests) + request, _ofDay[day].Behind);
    }

    private int CheapestPattern(int request)
    {
        int[] patterns = _model.Patterns[request];
        int union = 0, best = 0;
        foreach (int pattern in patterns) union |= pattern;
        for (int day = 0; day < _model.Days; day++)
            if ((union >> day & 1) != 0) _ofDay[day] = _insertion.Best((day * _model.Requests) + request);
        long least = _model.LeavingOut[request];
        foreach (int pattern in patterns)
        {
            long added = 0;
            for (int day = 0; day < _model.Days; day++)
                if ((pattern >> day & 1) != 0) added += _ofDay[day].Behind < 0 ? int.MaxValue : _ofDay[day].Added;
            if (added >= least) continue;
            least = added;
            best = pattern;
        }

        return best;
    }

    private void PutOnDay(int request, int day)
    {
        int visit = (day * _model.Requests) + request;
        Place place = _insertion.Best(visit);
        if (place.Behind >= 0)
        {
            _state.Insert(visit, place.Behind);
            return;
        }

        TakeOutRest(request);
        _state.RetimeTouched();
        _state.Choose(request, 0);
    }

    private void TakeOutRest(int request)
    {
        for (int day = 0; day < _model.Days; day++)
        {
            int visit = (day * _model.Requests) + request;
            if (_state.Links[visit].Route >= 0) _state.Remove(visit);
        }
    }
}
