namespace HomeLine.Planning.Routing;

/// <summary>
/// Ruin and recreate with annealing over one problem. Anytime: it stops when the budget is used up or the caller cancels, and always has a plan. Same
/// problem, options and number of iterations: same plan.
/// </summary>
public sealed class RoutingSearch
{
    /// <summary>Iterations between two looks at the budget and the cancellation.</summary>
    private const int BetweenLooks = 64;

    /// <summary>Own value: see <see cref="Recreate.PutInAll"/>; large problems begin too cool to open routes later.</summary>
    private const double PatienceOfFirstPlan = 5;

    private readonly RoutingModel _model;
    private readonly RoutingOptions _options;
    private readonly Chance _chance;
    private readonly RoutingState _state;
    private readonly StringRuin _ruin;
    private readonly Recreate _recreate;
    private readonly PlanStore _best;
    private readonly Polish _polish;
    private readonly OverloadPricing _overload;
    private readonly LocalSearch _local;
    private readonly bool _givesUpEarly;
    private double _leg;

    /// <summary>Prepares a search; no plan yet.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="options">How to search.</param>
    /// <exception cref="ArgumentException">The problem contradicts itself; the message says where.</exception>
    public RoutingSearch(RoutingProblem problem, RoutingOptions options)
    {
        _model = new RoutingModel(problem);
        _options = options;
        _chance = new Chance(options.Seed);
        _state = new RoutingState(_model);
        NearRequest[][]? near = _model.Requests >= (_model.Days > 1 ? options.NearFromWithDays : options.NearFrom) ? NearRequest.Lists(_model, _model.Days > 1 ? options.Near * 3 : options.Near) : null;
        var insertion = new Insertion(_state, near, _chance);
        _ruin = new StringRuin(_state, _chance, options with { AverageRuin = _model.Requests < Cooling.Large ? options.AverageRuin : options.AverageRuinOfLarge });
        _recreate = new Recreate(_state, insertion, _chance);
        _best = new PlanStore(_model);
        _givesUpEarly = _model.Requests >= Cooling.Large && _model.Days == 1 && !_model.Problem.DurationIsCost;
        _polish = new Polish(_model);
        _local = new LocalSearch(_state);
        _overload = new OverloadPricing(_model, _model.Requests < Cooling.Large ? options.OverloadShare : options.OverloadShareOfLarge);
    }

    /// <summary>Iterations done so far.</summary>
    public long Iterations { get; private set; }

    /// <summary>Called every <see cref="RoutingOptions.MeetEvery"/> iterations with the best plan; answers the best plan of all searches that meet, which is taken over when it is better.</summary>
    internal Func<RoutingPlan, RoutingPlan>? Meet { get; init; }

    /// <summary>Called after every finished move, before it is kept or undone; for checks only.</summary>
    internal Action<RoutingState>? AfterMove { get; set; }

    /// <summary>Searches until the budget is used up or the caller cancels.</summary>
    /// <param name="budget">How long.</param>
    /// <param name="start">A plan to start from; the answer is never worse than the part of it that keeps the rules, and that part is all of a valid plan.</param>
    /// <param name="cancel">Stops the search within a few milliseconds.</param>
    public RoutingPlan Run(ISearchBudget budget, RoutingPlan? start = null, CancellationToken cancel = default)
    {
        Begin(start);
        if (_model.Requests > 0 && _model.Vehicles.Length > 0) Anneal(budget, cancel);
        return _best.Plan();
    }

    private void Begin(RoutingPlan? start)
    {
        if (start is not null) _state.TakeOver(start);
        _state.Begin();
        if (start is not null) _best.Keep(_state);
        _recreate.PutInAll(start is null && _model.Requests >= Cooling.Large ? PatienceOfFirstPlan : 1);
        if (_best.IsWorseThan(_state)) _best.Keep(_state);
        _leg = (double)(_state.Total - _state.PriceOfAbsent()) / Math.Max(1, _state.Served + _state.Used.Count);
        _overload.Begin(_state, _leg);
    }

    private void Anneal(ISearchBudget budget, CancellationToken cancel)
    {
        var cooling = new Cooling(_options, _model.Requests, (double)_state.Served / Math.Max(1, _state.Used.Count));
        double temperature = 0, polishAt = _model.Requests < Cooling.Large ? _options.FirstPolish : Math.Max(_options.FirstPolish, _options.FirstPolishOfLarge), polishTook = 0;
        for (long iteration = 0; ; iteration++, Iterations++)
        {
            if (iteration % BetweenLooks == 0)
            {
                double used = budget.Used(iteration);
                if (used >= Math.Min(1, polishAt) && polishAt <= 1)
                {
                    Choose(budget, cancel);
                    polishTook = Math.Max(polishTook, budget.Used(iteration) - used);
                    polishAt = NextPolish(polishAt, used, polishTook);
                    used = budget.Used(iteration);
                }

                if (used >= 1 || cancel.IsCancellationRequested) return;
                if (Meet is not null && iteration > 0 && iteration % (BetweenLooks * Math.Max(1, _options.MeetEvery / BetweenLooks)) == 0) TakeOver(Meet(_best.Plan()));
                _overload.Adapt(_state);
                temperature = _leg * cooling.At(used, iteration);
            }

            Step(temperature);
        }
    }

    /// <summary>The next share of the budget at which to choose among all routes; the last one leaves time for itself. Above 1: never again.</summary>
    private double NextPolish(double last, double used, double took)
    {
        double final = 1 - Math.Max(_options.LastPolishReserve, 1.5 * took);
        if (last >= final || used >= final) return 2;
        double next = Math.Max(used, last) + Math.Max(_options.PolishEvery, 8 * took);
        return next < final - (_options.PolishEvery / 2) ? next : final;
    }

    private void Choose(ISearchBudget budget, CancellationToken cancel)
    {
        double seconds = budget.SecondsLeft;
        if (_polish.Better(_best.Plan(), _options.PolishEffort, double.IsInfinity(seconds) ? seconds : seconds * 0.7, cancel) is { } better) TakeOver(better, always: true);
    }

    private void TakeOver(RoutingPlan better, bool always = false)
    {
        if (!always && (better.Missing > 0 || better.Cost >= _best.Total)) return;
        _state.TakeOver(better);
        if (_best.IsWorseThan(_state)) _best.Keep(_state);
    }

    private void Step(double temperature)
    {
        long before = _state.Judged;
        _state.Begin();
        // Where the limit is known beforehand, most of the moves that fail are given up halfway.
        bool early = _givesUpEarly && _state.AbsentCount == 0;
        double limit = early ? Limit(before, temperature) : double.MaxValue;
        if (!Move(limit))
        {
            _state.Undo();
            return;
        }

        if (_local.Applies && _state.Judged < Math.Min(before, _best.Total + (long)(_options.DescendAbove * _best.Total))) _local.Descend();
        AfterMove?.Invoke(_state);
        if (!early) limit = Limit(before, temperature);
        if (_state.Judged >= limit)
        {
            _state.Undo();
            return;
        }

        if (_best.IsWorseThan(_state)) _best.Keep(_state);
        _polish.Notice(_state, _best.Total);
    }

    private double Limit(long before, double temperature) => before - (temperature * Math.Log(1 - _chance.NextFraction()));

    private bool Move(double limit)
    {
        if (_model.Days > 1 && _chance.NextFraction() < _options.AnyDayShare)
        {
            if (_chance.Next(2) == 0) _ruin.ApplyToRequests();
            else _ruin.Apply(oneDay: false);
            _recreate.PutBackAnyDay(_ruin);
            return true;
        }

        _ruin.Apply(oneDay: true);
        _state.RetimeTouched();
        if (limit < double.MaxValue) return _recreate.PutBackBelow(_ruin, limit);
        _recreate.PutBack(_ruin);
        return true;
    }
}
