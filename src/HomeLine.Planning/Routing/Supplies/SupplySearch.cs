using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Supplies;

/// <summary>
/// Ruin and recreate with annealing, then the best choice among all good routes seen. Anytime, and the same for the same seed and number of iterations.
/// </summary>
public sealed class SupplySearch
{
    private const int BetweenLooks = 32;

    /// <summary>Own values: when to choose among the routes seen (shares of the budget), the limit of one choice in the solver's deterministic time, routes kept.</summary>
    private static readonly double[] s_chooseAt = [0.45, 0.7, 0.95];
    private const double Effort = 1;
    private const int MostRoutes = 20_000;

    private readonly SupplyProblem _problem;
    private readonly Chance _chance;
    private readonly SupplyState _state;
    private readonly SupplyRuin _ruin;
    private readonly SupplyInsertion _insertion;
    private readonly RoutePool _pool;
    private readonly int[][] _orders;
    private readonly int[] _random, _best, _route;
    private readonly double _leg;
    private readonly long _priceOfMissing;
    private int _bestLength, _bestMissing = int.MaxValue;
    private long _bestTotal = long.MaxValue;

    /// <summary>Prepares a search; no plan yet.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="seed">Seed of all chance.</param>
    /// <exception cref="ArgumentException">Numbers of part kinds differ, or the matrix has the wrong size.</exception>
    public SupplySearch(SupplyProblem problem, ulong seed)
    {
        if (problem.Travel.Length != problem.Places * problem.Places) throw new ArgumentException($"The matrix must have {problem.Places} times {problem.Places} entries.");
        if (problem.People.Select(person => person.Parts.Length).Concat(problem.Requests.Select(request => request.Parts.Length)).Distinct().Count() > 1)
            throw new ArgumentException("Everybody must list the same kinds of parts.");
        _problem = problem;
        _chance = new Chance(seed);
        var roads = new SupplyRoads(problem);
        _state = new SupplyState(problem, roads);
        _ruin = new SupplyRuin(problem, _state, _chance);
        _insertion = new SupplyInsertion(_state, roads, _chance);
        int requests = problem.Requests.Length;
        _pool = new RoutePool(MostRoutes, Math.Max(10, requests / 5));
        _random = new int[requests];
        _orders =
        [
            _random,
            [.. problem.Requests.Select(request => request.Opens)],
            [.. problem.Requests.Select(request => -request.Closes)],
            [.. problem.Requests.Select(request => request.Closes - request.Opens)],
            [.. problem.Requests.Select(request => request.Able.Length)],
            [.. problem.Requests.Select(request => -problem.Travel[(problem.Depot.Place * problem.Places) + request.Place])],
        ];
        _best = new int[requests + (2 * problem.People.Length)];
        _route = new int[requests];
        _leg = requests == 0 ? 1 : problem.Requests.Average(one => problem.Requests.Average(other => (double)problem.Travel[(one.Place * problem.Places) + other.Place])) / 4;
        _priceOfMissing = problem.Travel.Length == 0 ? 1 : 8L * problem.Travel.Max();
    }

    /// <summary>Plans tried so far.</summary>
    public long Iterations { get; private set; }

    /// <summary>First temperature in quarters of the mean way between two requests.</summary>
    public double FirstTemperature { get; init; } = 1;

    /// <summary>Last temperature, in the same unit.</summary>
    public double LastTemperature { get; init; } = 0.01;

    /// <summary>Searches until the budget is used up or the caller cancels.</summary>
    /// <param name="budget">How long.</param>
    /// <param name="cancel">Stops within a few milliseconds.</param>
    public SupplyPlan Run(ISearchBudget budget, CancellationToken cancel = default)
    {
        if (_problem.Requests.Length > 0 && _problem.People.Length > 0) Anneal(budget, cancel);
        return Plan();
    }

    private void Anneal(ISearchBudget budget, CancellationToken cancel)
    {
        double temperature = _leg * FirstTemperature;
        int choices = 0;
        for (; ; Iterations++)
        {
            if (Iterations % BetweenLooks == 0)
            {
                double used = budget.Used(Iterations);
                if (used >= 1 || cancel.IsCancellationRequested) return;
                if (choices < s_chooseAt.Length && used >= s_chooseAt[choices])
                {
                    choices++;
                    Choose(budget.SecondsLeft, cancel);
                }

                temperature = _leg * FirstTemperature * Math.Pow(LastTemperature / FirstTemperature, used);
            }

            Step(temperature);
        }
    }

    private long Judged => _state.Total + (_state.Missing * _priceOfMissing);

    private void Step(double temperature)
    {
        long before = Judged;
        _state.Begin();
        _ruin.Apply();
        _state.SettleTouched();
        Sort();
        for (int i = 0; i < _ruin.Count; i++)
        {
            SupplySpot spot = _insertion.Best(_ruin.Removed[i]);
            if (spot.Person >= 0) _state.Insert(_ruin.Removed[i], spot);
        }

        if (Judged >= before - (temperature * Math.Log(1 - _chance.NextFraction())))
        {
            _state.Undo();
            return;
        }

        if (_state.Missing < _bestMissing || (_state.Missing == _bestMissing && _state.Total < _bestTotal)) Keep();
        Notice();
    }

    private void Sort()
    {
        int[] keys = _orders[_chance.Next(_orders.Length + 2) % _orders.Length], requests = _ruin.Removed;
        if (ReferenceEquals(keys, _random))
            for (int i = 0; i < _ruin.Count; i++) _random[requests[i]] = _chance.Next(1 << 30);
        for (int i = 1; i < _ruin.Count; i++)
        {
            int request = requests[i], at = i;
            for (; at > 0 && keys[requests[at - 1]] > keys[request]; at--) requests[at] = requests[at - 1];
            requests[at] = request;
        }
    }

    private void Keep()
    {
        (_bestMissing, _bestTotal, _bestLength) = (_state.Missing, _state.Total, 0);
        foreach (SupplyRoute route in _state.Routes)
        {
            for (int i = 0; i < route.Count; i++) _best[_bestLength++] = route.Stops[i];
            // A person ends with a number below that of the pass.
            _best[_bestLength++] = SupplyPlan.Pass - 1;
        }
    }

    private void Notice()
    {
        if (Judged > 1.02 * _bestTotal) return;
        for (int i = 0; i < _state.TouchedCount; i++)
        {
            SupplyRoute route = _state.Routes[_state.TouchedAt(i)];
            int count = 0;
            for (int at = 0; at < route.Count; at++)
                if (at != route.PassAt) _route[count++] = route.Stops[at];
            if (count > 0) _pool.Add(_state.TouchedAt(i), _route.AsSpan(0, count), route.Cost);
        }
    }

    private void Choose(double seconds, CancellationToken cancel)
    {
        if (_bestMissing > 0) return;
        int requests = _problem.Requests.Length;
        var cover = new PoolProblem(requests, [.. Enumerable.Range(0, requests).Select(request => new[] { new[] { request } })], new long?[requests], [.. _problem.People.Select(_ => 1)]);
        PooledRoute[] routes = [.. _pool.Routes()];
        if (new PoolChoice(cover, routes).Better(_bestTotal, Effort, double.IsInfinity(seconds) ? seconds : seconds * 0.5, cancel) is not { } chosen) return;
        _state.Begin();
        for (int person = 0; person < _state.Routes.Length; person++) _state.Take(person, []);
        foreach (int i in chosen) _state.Take(routes[i].Kind, routes[i].Visits);
        if (_state.Missing == 0 && _state.Total < _bestTotal) Keep();
        _state.Begin();
    }

    private SupplyPlan Plan()
    {
        var rounds = new List<SupplyRound>();
        var left = new SortedSet<int>(Enumerable.Range(0, _problem.Requests.Length));
        long duration = 0;
        var roads = new SupplyRoads(_problem);
        for (int at = 0, person = 0; at < _bestLength; at++, person++)
        {
            ImmutableArray<int> stops = [.. _best.AsSpan(at, _best.AsSpan(at).IndexOf(SupplyPlan.Pass - 1))];
            at += stops.Length;
            if (stops.IsEmpty) continue;
            rounds.Add(new SupplyRound(person, stops));
            left.ExceptWith(stops);
            var route = new SupplyRoute(stops.Length, _problem.People[person].Parts.Length);
            foreach (int stop in stops) route.InsertAt(route.Count, stop);
            roads.Retime(person, route);
            duration += route.Duration;
        }

        return new SupplyPlan([.. rounds], duration, [.. left]);
    }
}
