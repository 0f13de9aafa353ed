using System.Runtime.CompilerServices;

namespace HomeLine.Planning.Routing;

/// <summary>Where a visit could go and what it would add.</summary>
internal struct Place
{
    public int Behind;
    public int Added;
}

/// <summary>
/// The cheapest position of a visit, in constant time for each position. A position that would become the best one is overlooked with a small chance
/// ("blink", Christiaens and Vanden Berghe 2020): the same law as overlooking every position, with far fewer random numbers.
/// </summary>
internal sealed class Insertion
{
    private const double BlinkChance = 0.01;
    private static readonly double BlinkRate = 1 / Math.Log(1 - BlinkChance);

    private readonly RoutingState _state;
    private readonly RoutingModel _model;
    private readonly NearRequest[][] _near;
    private readonly Chance _chance;
    private int _untilBlink;

    /// <summary>How much dearer than elsewhere the first visit of an idle vehicle may be; 1 while searching.</summary>
    public double Patience { get; set; } = 1;

    /// <param name="state">The routes.</param>
    /// <param name="near">For each request those it is tried beside; null to try every position.</param>
    /// <param name="chance">Where blinks come from.</param>
    public Insertion(RoutingState state, NearRequest[][]? near, Chance chance)
    {
        _state = state;
        _model = state.Model;
        _near = near ?? [];
        _chance = chance;
        _untilBlink = chance.NextWait(BlinkRate);
    }

    /// <summary>The best position, or one behind -1.</summary>
    /// <param name="visit">The visit to put in.</param>
    /// <param name="below">What it may add at most, excluded; then positions beside none of the near requests are only looked at where they can be cheap enough.</param>
    public Place Best(int visit, int below = int.MaxValue)
    {
        var best = new Place { Behind = -1, Added = below };
        if (_near.Length == 0 || _model.Problem.DurationIsCost)
        {
            Everywhere(visit, ref best);
        }
        else
        {
            Beside(visit, ref best);
            if (best.Behind < 0 && Reaches(visit, below)) Everywhere(visit, ref best);
        }

        InIdle(visit, ref best);
        return best;
    }

    // A position beside none of the near requests costs about twice the way to the last of them.
    private bool Reaches(int visit, int below)
    {
        if (below == int.MaxValue) return true;
        NearRequest[] near = _near[_model.Of[visit].Request];
        return below > near[^1].Into;
    }

    private void Everywhere(int visit, ref Place best)
    {
        ref VisitFacts fact = ref _model.Of[visit];
        int[] used = _state.Used.Of(fact.Day);
        int count = _state.Used.CountOf(fact.Day);
        for (int i = 0; i < count; i++)
        {
            ref RouteHead route = ref Cells.At(_state.Routes, Cells.At(used, i));
            int extra = Extra(route, fact);
            if (extra < 0 || extra >= best.Added) continue;
            if (_model.UsesDuration) AlongWithDuration(visit, fact, route, extra, ref best);
            else Along(fact, route.First, route.Last, extra, ref best);
        }
    }

    /// <summary>What the vehicle adds to every position: the price of more load than it may carry; -1 when it must not come.</summary>
    private int Extra(in RouteHead route, in VisitFacts fact)
    {
        if (!_model.EverybodyEligible && !_model.Eligible[(fact.Request * _model.Problem.Kinds.Length) + route.Kind]) return -1;
        int over = route.Load + fact.Demand - route.Capacity;
        if (over <= 0) return 0;
        return over > _state.MostOverload ? -1 : Math.Min(over, fact.Demand) * _state.OverloadPrice;
    }

    private void Along(in VisitFacts fact, int first, int last, int extra, ref Place best)
    {
        Link[] links = _state.Links;
        int row = fact.Place * _model.Places, opens = fact.Opens, service = fact.Service;
        ref int costInto = ref Cells.At(_model.CostInto, row);
        ref int costOutOf = ref Cells.At(_model.Cost, row);
        ref int timeInto = ref Cells.At(_model.TimeInto, row);
        ref int timeOutOf = ref Cells.At(_model.Time, row);
        int behind = first, lastDeparture = fact.LastDeparture, closes = fact.Closes, least = best.Added - extra;
        ref Link before = ref Cells.At(links, first);
        do
        {
            if (before.Ready > lastDeparture) break;
            int next = before.Next;
            ref Link after = ref Cells.At(links, next);
            int added = Unsafe.Add(ref costInto, before.Place) + Unsafe.Add(ref costOutOf, after.Place) - before.Edge;
            if (added < least)
            {
                int start = Math.Max(before.Ready + Unsafe.Add(ref timeInto, before.Place), opens);
                if (start <= closes && start + service + Unsafe.Add(ref timeOutOf, after.Place) <= after.Late && !Blinks())
                {
                    least = added;
                    best.Added = added + extra;
                    best.Behind = behind;
                }
            }

            behind = next;
            before = ref after;
        }
        while (behind != last);
    }

    private void AlongWithDuration(int visit, in VisitFacts fact, in RouteHead route, int extra, ref Place best)
    {
        Link[] links = _state.Links;
        int row = fact.Place * _model.Places;
        TimeSegment own = _state.Own(visit);
        int durationPaid = _model.Problem.DurationIsCost ? 1 : 0, already = route.PricedDuration;
        for (int behind = route.First; behind != route.Last; behind = Cells.At(links, behind).Next)
        {
            ref Link before = ref Cells.At(links, behind);
            if (before.Ready > fact.LastDeparture) break;
            ref Link after = ref Cells.At(links, before.Next);
            int added = Cells.At(_model.CostInto, row + before.Place) + Cells.At(_model.Cost, row + after.Place) - before.Edge + extra;
            if (durationPaid == 0 && added >= best.Added) continue;
            int start = Math.Max(before.Ready + Cells.At(_model.TimeInto, row + before.Place), fact.Opens);
            int out_ = Cells.At(_model.Time, row + after.Place);
            if (start > fact.Closes || start + fact.Service + out_ > after.Late) continue;
            TimeSegment.TryJoin(_state.Fore[behind], Cells.At(_model.TimeInto, row + before.Place), own, out TimeSegment head);
            TimeSegment.TryJoin(head, out_, _state.Back[before.Next], out TimeSegment whole);
            if (whole.Duration > route.LongestDuration) continue;
            added += durationPaid * (whole.Duration - already);
            if (added >= best.Added || Blinks()) continue;
            best.Added = added;
            best.Behind = behind;
        }
    }

    private void Beside(int visit, ref Place best)
    {
        ref VisitFacts fact = ref _model.Of[visit];
        Link[] links = _state.Links;
        NearRequest[] all = Cells.At(_near, fact.Request);
        int row = fact.Place * _model.Places, offset = fact.Day * _model.Requests;
        ref int costInto = ref Cells.At(_model.CostInto, row);
        ref int costOutOf = ref Cells.At(_model.Cost, row);
        for (int i = 0; i < all.Length; i++)
        {
            ref NearRequest near = ref Cells.At(all, i);
            int other = near.Other + offset;
            ref Link link = ref Cells.At(links, other);
            if (link.Route < 0) continue;
            if (link.Ready <= near.LastReady && near.FloorBehind - (2 * link.Edge) < best.Added)
            {
                ref Link after = ref Cells.At(links, link.Next);
                int added = near.Into + Unsafe.Add(ref costOutOf, after.Place) - link.Edge;
                if (added < best.Added) Try(visit, fact, row, ref link, other, ref after, added, ref best);
            }

            if (link.Late < near.LeastLate) continue;
            ref Link before = ref Cells.At(links, link.Prev);
            if (near.FloorBefore - (2 * before.Edge) >= best.Added) continue;
            int addedBefore = near.OutOf + Unsafe.Add(ref costInto, before.Place) - before.Edge;
            if (addedBefore < best.Added) Try(visit, fact, row, ref before, link.Prev, ref link, addedBefore, ref best);
        }
    }

    private void Try(int visit, in VisitFacts fact, int row, ref Link before, int behind, ref Link after, int added, ref Place best)
    {
        int start = Math.Max(before.Ready + Cells.At(_model.TimeInto, row + before.Place), fact.Opens);
        if (start > fact.Closes || start + fact.Service + Cells.At(_model.Time, row + after.Place) > after.Late) return;
        int extra = Extra(Cells.At(_state.Routes, before.Route), fact);
        if (extra < 0 || added + extra >= best.Added) return;
        if (_model.UsesDuration && !Lasts(visit, row, ref before, behind)) return;
        if (Blinks()) return;
        best.Added = added + extra;
        best.Behind = behind;
    }

    private bool Lasts(int visit, int row, ref Link before, int behind)
    {
        int next = before.Next;
        TimeSegment.TryJoin(_state.Fore[behind], Cells.At(_model.TimeInto, row + before.Place), _state.Own(visit), out TimeSegment head);
        TimeSegment.TryJoin(head, Cells.At(_model.Time, row + _state.Links[next].Place), _state.Back[next], out TimeSegment whole);
        return whole.Duration <= _state.Routes[before.Route].LongestDuration;
    }

    private void InIdle(int visit, ref Place best)
    {
        ref VisitFacts fact = ref _model.Of[visit];
        foreach (int kind in _state.Used.KindsOfDay[fact.Day])
        {
            int vehicle = _state.Used.IdleOf(kind);
            if (vehicle < 0) continue;
            ref RouteHead route = ref _state.Routes[vehicle];
            int extra = Extra(route, fact);
            if (extra < 0) continue;
            var alone = new Place { Behind = -1, Added = (int)Math.Min(int.MaxValue, (Patience * best.Added) - _model.Problem.Kinds[kind].FixedCost) };
            if (best.Behind < 0) alone.Added = best.Added == int.MaxValue ? int.MaxValue : best.Added - _model.Problem.Kinds[kind].FixedCost;
            if (_model.UsesDuration) AlongWithDuration(visit, fact, route, extra, ref alone);
            else Along(fact, route.First, route.Last, extra, ref alone);
            if (alone.Behind < 0) continue;
            best = new Place { Behind = alone.Behind, Added = alone.Added + _model.Problem.Kinds[kind].FixedCost };
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private bool Blinks()
    {
        if (--_untilBlink > 0) return false;
        _untilBlink = _chance.NextWait(BlinkRate);
        return true;
    }
}
