using System.Runtime.CompilerServices;

namespace HomeLine.Planning.Routing;

/// <summary>Beginning a move and taking it back.</summary>
internal sealed partial class RoutingState
{
    private readonly MoveLog _log;
    private int _stamp;

    /// <summary>Routes of the move so far.</summary>
    public int TouchedCount => _log.Routes;

    public int TouchedAt(int index) => _log.RouteAt(index);

    public bool IsTouched(int vehicle) => Routes[vehicle].Stamp == _stamp;

    public void Begin()
    {
        _stamp++;
        _log.Begin(Total, Overload, Served);
    }

    /// <summary>Back to where the move began.</summary>
    public void Undo()
    {
        for (int i = 0; i < _log.Routes; i++) Unhook(Routes[_log.RouteAt(i)]);
        for (int i = 0; i < _log.Routes; i++) Restore(i);
        for (int i = _log.Choices - 1; i >= 0; i--) SetChosen(_log.RequestAt(i), _log.PatternAt(i));
        Total = _log.Total;
        Served = _log.Served;
        Overload = _log.Overload;
        _log.Begin(Total, Overload, Served);
        _stamp++;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Touch(int vehicle)
    {
        if (Routes[vehicle].Stamp != _stamp) Copy(vehicle);
    }

    private void Copy(int vehicle)
    {
        ref RouteHead route = ref Routes[vehicle];
        route.Stamp = _stamp;
        int at = _log.Next;
        for (int v = route.First; v >= 0; v = Links[v].Next, at++)
        {
            _log.Ids[at] = v;
            _log.Links[at] = Links[v];
            if (!_model.UsesDuration) continue;
            _log.Fore[at] = Fore[v];
            _log.Back[at] = Back[v];
        }

        _log.Add(vehicle, route, route.Count + 2);
    }

    private void Unhook(in RouteHead route)
    {
        for (int v = Links[route.First].Next; v != route.Last; v = Links[v].Next) Links[v].Route = -1;
    }

    private void Restore(int index)
    {
        int vehicle = _log.RouteAt(index);
        for (int at = _log.StartOf(index); at < _log.StartOf(index + 1); at++)
        {
            int v = _log.Ids[at];
            Links[v] = _log.Links[at];
            if (!_model.UsesDuration) continue;
            Fore[v] = _log.Fore[at];
            Back[v] = _log.Back[at];
        }

        ref RouteHead route = ref Routes[vehicle];
        bool wasUsed = _log.HeadAt(index).Count > 0;
        route.Load = _log.HeadAt(index).Load;
        route.PricedDuration = _log.HeadAt(index).PricedDuration;
        if (route.Count > 0 != wasUsed)
        {
            if (wasUsed) _used.Enter(Routes, vehicle);
            else _used.Leave(Routes, vehicle);
        }

        route.Count = _log.HeadAt(index).Count;
    }
}
