namespace HomeLine.Planning.Routing.Shifts;

/// <summary>Simulated annealing over <see cref="ShiftOrder"/>. Anytime, and the same for the same seed and number of iterations.</summary>
public sealed class ShiftSearch
{
    private const int BetweenLooks = 256;

    /// <summary>Own values: searches from scratch, the share of the budget each gets, and how far the rest heats the best of them again.</summary>
    private const int Starts = 3;
    private const double StartShare = 0.2, Reheat = 0.3;

    /// <summary>Own values: changes tried while walking down, for each visit, and then only to see how much a change costs.</summary>
    private const int Descent = 100, Samples = 2_000;

    /// <summary>Own values: the price of what is forbidden at first, in first temperatures, and the share of the time after which it is full.</summary>
    private const double CheapestForbidden = 1, ForbiddenUntil = 0.7;

    private readonly ShiftProblem _problem;
    private readonly Chance _chance;
    private readonly ShiftWalk _walk;
    private readonly ShiftMoves _moves;
    private readonly ShiftOrder _current, _candidate, _best;
    private long _least = long.MaxValue;

    /// <summary>Prepares a search.</summary>
    /// <param name="problem">The problem; every part of a visit must have somebody able, and two different people where it needs two.</param>
    /// <param name="seed">Seed of all chance.</param>
    public ShiftSearch(ShiftProblem problem, ulong seed)
    {
        _problem = problem;
        _chance = new Chance(seed);
        _walk = new ShiftWalk(problem);
        _moves = new ShiftMoves(problem, _chance);
        int visits = problem.Visits.Length, patients = problem.Optional.Length;
        (_current, _candidate, _best) = (new ShiftOrder(visits, patients), new ShiftOrder(visits, patients), new ShiftOrder(visits, patients));
    }

    /// <summary>Days tried so far.</summary>
    public long Iterations { get; private set; }

    /// <summary>First temperature as a multiple of what a change that makes things worse costs in the middle.</summary>
    public double FirstTemperature { get; init; } = 3;

    /// <summary>Last temperature, in the same unit.</summary>
    public double LastTemperature { get; init; } = 0.02;

    /// <summary>Searches until the budget is used up or the caller cancels.</summary>
    /// <param name="budget">How long.</param>
    /// <param name="cancel">Stops within a few milliseconds.</param>
    /// <exception cref="ArgumentException">A visit nobody can make.</exception>
    public ShiftPlan Run(ISearchBudget budget, CancellationToken cancel = default)
    {
        if (_problem.Visits.Length == 0) return Plan();
        for (int start = 0; start < Starts; start++)
        {
            Begin();
            double unit = Unit();
            Anneal(budget, start * StartShare, (start + 1) * StartShare, unit * FirstTemperature, unit * LastTemperature, cancel);
            if (start + 1 < Starts) continue;
            _current.CopyFrom(_best);
            Anneal(budget, Starts * StartShare, 1, unit * FirstTemperature * Reheat, unit * LastTemperature, cancel);
        }

        return Plan();
    }

    private void Begin()
    {
        int at = 0;
        Array.Clear(_current.From);
        Array.Clear(_current.Lunch);
        Array.Clear(_current.Out);
        foreach (int visit in Enumerable.Range(0, _problem.Visits.Length).OrderBy(visit => _problem.Visits[visit].Windows[0].Opens + _problem.Visits[visit].Windows[0].Closes))
        {
            _current.Order[at++] = visit;
            (_current.First[visit], _current.Second[visit]) = Pair(_problem.Visits[visit]);
        }

        Keep(_walk.Cost(_current));
    }

    private void Keep(long cost)
    {
        if (cost >= _least) return;
        _least = cost;
        _best.CopyFrom(_current);
    }

    private (int First, int Second) Pair(ShiftVisit visit)
    {
        foreach (int first in visit.First.Able.OrderBy(_ => _chance.Next(1 << 20)))
        {
            if (visit.Second is null) return (first, -1);
            foreach (int second in visit.Second.Able.OrderBy(_ => _chance.Next(1 << 20)))
                if (second != first)
                    return (first, second);
        }

        throw new ArgumentException($"Nobody can make the visit at place {visit.Place}, or not two people where it needs two.");
    }

    /// <summary>Walks down a little, then says what a change for the worse that breaks nothing costs in the middle.</summary>
    private double Unit()
    {
        long cost = _walk.Cost(_current);
        for (int i = 0; i < Descent * _problem.Visits.Length; i++)
            if (Try() is { } so && so < cost)
            {
                cost = so;
                _current.CopyFrom(_candidate);
                Keep(cost);
            }

        var worse = new List<long>(Samples);
        for (int i = 0; i < Samples; i++)
            if (Try() is { } so && so > cost && so < cost + ShiftPrices.Forbidden)
                worse.Add(so - cost);
        worse.Sort();
        return worse.Count == 0 ? 1 : worse[worse.Count / 2];
    }

    private long? Try()
    {
        Iterations++;
        _candidate.CopyFrom(_current);
        return _moves.Apply(_candidate) ? _walk.Cost(_candidate) : null;
    }

    private void Anneal(ISearchBudget budget, double from, double until, double first, double last, CancellationToken cancel)
    {
        double temperature = first, price = first;
        (long cost, long forbidden) = (_walk.Cost(_current), _walk.Forbidden);
        for (int looks = 0; ; looks++)
        {
            if (looks % BetweenLooks == 0)
            {
                double used = (budget.Used(Iterations) - from) / (until - from);
                if (used >= 1 || cancel.IsCancellationRequested) return;
                temperature = first * Math.Pow(last / first, Math.Max(0, used));
                price = PriceOfForbidden(first, used);
            }

            if (Try() is not { } so) continue;
            double worse = so - cost - ((ShiftPrices.Forbidden - price) * (_walk.Forbidden - forbidden));
            if (worse >= -temperature * Math.Log(1 - _chance.NextFraction())) continue;
            (cost, forbidden) = (so, _walk.Forbidden);
            _current.CopyFrom(_candidate);
            Keep(cost);
        }
    }

    /// <summary>
    /// What a set forbids is cheap while the search is warm, so that it can pass through it, and dearer than everything else from the middle on.
    /// </summary>
    private static double PriceOfForbidden(double warm, double used) =>
        Math.Min(ShiftPrices.Forbidden, warm * CheapestForbidden * Math.Pow(ShiftPrices.Forbidden / (warm * CheapestForbidden), Math.Clamp(used / ForbiddenUntil, 0, 1)));

    private ShiftPlan Plan()
    {
        long cost = _walk.Cost(_best);
        var stops = new List<ShiftStop>();
        foreach (int visit in _best.Order.Where(visit => !_best.Out[_problem.Visits[visit].Patient]))
        {
            stops.Add(Stop(visit, false, _best.First[visit]));
            if (_best.Second[visit] >= 0) stops.Add(Stop(visit, true, _best.Second[visit]));
        }

        return new ShiftPlan([.. stops], [.. Enumerable.Range(0, _best.Out.Length).Where(patient => _best.Out[patient])], cost);
    }

    private ShiftStop Stop(int visit, bool second, int person)
    {
        WalkedPart part = _walk.PartOf(visit, second);
        return new ShiftStop(visit, second, person, part.Lunch < 0 ? null : part.Lunch, part.Start);
    }
}
