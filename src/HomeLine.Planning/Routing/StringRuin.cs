namespace HomeLine.Planning.Routing;

/// <summary>
/// Takes strings of neighbouring visits out of neighbouring routes (slack induction by string removals, Christiaens and Vanden Berghe, Transportation
/// Science 54, 2020; numbers as published unless said otherwise).
/// </summary>
internal sealed class StringRuin
{
    private const double SplitChance = 0.5, SplitDepth = 0.01;

    private readonly RoutingState _state;
    private readonly RoutingModel _model;
    private readonly Chance _chance;
    private readonly double _average;
    private readonly int _longest;
    private readonly int[] _removed;
    private readonly int[] _hit;
    private readonly double _cutShare;
    private readonly int[] _tail;
    private bool _cut;
    private int _hits;

    public StringRuin(RoutingState state, Chance chance, RoutingOptions options)
    {
        _state = state;
        _model = state.Model;
        _chance = chance;
        _average = options.AverageRuin;
        _longest = options.LongestString;
        _cutShare = options.CutShare;
        _tail = new int[_model.Requests];
        _removed = new int[_model.Visits];
        _hit = new int[_model.Vehicles.Length];
    }

    /// <summary>Visits taken out by the last ruin, the first <see cref="Count"/> cells.</summary>
    public int[] Removed => _removed;
    public int Count { get; private set; }

    /// <summary>The day of the last seed.</summary>
    public int Day { get; private set; }

    /// <summary>Ruins around a random visit.</summary>
    /// <param name="oneDay">True to touch routes of one day only.</param>
    public void Apply(bool oneDay)
    {
        Count = 0;
        _hits = 0;
        if (_state.Served == 0) return;
        double size = (double)_state.Served / _state.Used.Count;
        double longest = Math.Min(_longest, size);
        double most = (4 * _average / (1 + longest)) - 1;
        int strings = (int)((_chance.NextFraction() * most) + 1);
        int seed = Seed();
        _cut = _cutShare > 0 && _chance.NextFraction() < _cutShare;
        Day = _model.Of[seed].Day;
        int[] around = _model.Adjacent[_model.Of[seed].Request];
        for (int i = 0; i < around.Length && _hits < strings; i++)
        {
            if (_model.Days == 1 || oneDay) Hit(around[i] + (Day * _model.Requests), longest, strings);
            else
                for (int d = 0; d < _model.Days; d++) Hit(around[i] + ((Day + d) % _model.Days * _model.Requests), longest, strings);
        }
    }

    /// <summary>Takes out whole neighbouring requests, all their days (own): room for them to change days together.</summary>
    public void ApplyToRequests()
    {
        Count = 0;
        if (_state.Served == 0) return;
        int seed = Seed(), wanted = 1 + _chance.Next((int)_average);
        Day = _model.Of[seed].Day;
        int[] around = _model.Adjacent[_model.Of[seed].Request];
        for (int i = 0; i < around.Length && wanted > 0; i++)
        {
            if (!_state.IsServed(around[i]) || (i > 0 && _chance.Next(4) == 0)) continue;
            wanted--;
            for (int day = 0; day < _model.Days; day++)
            {
                int visit = (day * _model.Requests) + around[i];
                if (_state.Links[visit].Route < 0) continue;
                _removed[Count++] = visit;
                _state.Remove(visit);
            }
        }
    }

    private int Seed()
    {
        while (true)
        {
            int visit = _chance.Next(_model.Visits);
            if (_state.Links[visit].Route >= 0) return visit;
        }
    }

    private void Hit(int visit, double longest, int strings)
    {
        int vehicle = _state.Links[visit].Route;
        if (vehicle < 0 || _hits >= strings || WasHit(vehicle)) return;
        _hit[_hits++] = vehicle;
        int size = _state.Routes[vehicle].Count;
        int length = (int)((_chance.NextFraction() * Math.Min(size, longest)) + 1);
        if (length > 1 && length < size && _chance.NextFraction() < SplitChance) Split(visit, length, size);
        else TakeOut(visit, length, 0, 0);
    }

    private bool WasHit(int vehicle)
    {
        for (int i = 0; i < _hits; i++)
            if (_hit[i] == vehicle) return true;
        return false;
    }

    private void Split(int visit, int length, int size)
    {
        int kept = 1;
        while (length + kept < size && _chance.NextFraction() <= SplitDepth) kept++;
        TakeOut(visit, length + kept, 1 + _chance.Next(length - 1), kept);
    }

    /// <summary>Takes out a random window of the route around the visit, sparing some inside.</summary>
    private void TakeOut(int visit, int length, int keepFrom, int kept)
    {
        Link[] links = _state.Links;
        int vehicle = links[visit].Route, first = _state.Routes[vehicle].First, last = _state.Routes[vehicle].Last;
        int before = 0, after = 0, at = visit;
        while (before < length - 1 && links[at].Prev != first)
        {
            at = links[at].Prev;
            before++;
        }

        for (int v = visit; after < length - 1 && links[v].Next != last; v = links[v].Next) after++;
        int earliest = before, latest = Math.Max(0, length - 1 - after);
        int back = latest + _chance.Next(earliest - latest + 1);
        for (int skip = before - back; skip > 0; skip--) at = links[at].Next;
        for (int i = 0; i < length && at != last; i++)
        {
            int next = links[at].Next;
            if (i < keepFrom || i >= keepFrom + kept)
            {
                _removed[Count++] = at;
                _state.Remove(at);
            }

            at = next;
        }

        if (_cut && at != last && links[at].Prev != first) Cut(vehicle, at);
        _cut = false;
    }

    /// <summary>
    /// What follows the string goes to an idle vehicle of the same kind (own). Putting back single visits opens a route only where that is cheap for one visit, so
    /// that plans with more and shorter routes were hardly reached.
    /// </summary>
    private void Cut(int vehicle, int from)
    {
        Link[] links = _state.Links;
        int idle = _state.Used.IdleOf(_state.Routes[vehicle].Kind), count = 0;
        if (idle < 0 || _model.KindOf(idle).Opens + _model.Time[(_model.KindOf(idle).Start * _model.Places) + links[from].Place] > links[from].Late) return;
        for (int v = from; v != _state.Routes[vehicle].Last; v = links[v].Next) _tail[count++] = v;
        for (int i = 0; i < count; i++) _state.Remove(_tail[i]);
        _state.Retime(vehicle);
        int behind = _state.Routes[idle].First;
        for (int i = 0; i < count; i++)
        {
            _state.Insert(_tail[i], behind);
            behind = _tail[i];
        }
    }
}
