using System.Diagnostics;

namespace HomeLine.Planning.Routing.Crews;

/// <summary>
/// Simulated annealing over one order of all visits and who goes (the representation is that of priority-order decoding; the moves are our own). Anytime, and the
/// same for the same seed and number of iterations.
/// </summary>
public sealed class CrewSearch
{
    private const int BetweenLooks = 256;

    /// <summary>Own values: searches from scratch, the share of the budget each gets, and how far the rest heats the best of them again.</summary>
    private const int Starts = 3;
    private const double StartShare = 0.2, Reheat = 0.3;

    private readonly CrewProblem _problem;
    private readonly Chance _chance;
    private readonly CrewClock _clock;
    private readonly CrewMoves _moves;
    private readonly CrewOrder _current, _candidate, _best;
    private long _least;

    /// <summary>Prepares a search.</summary>
    /// <param name="problem">The problem; every visit must have somebody able, and two different people where it needs two.</param>
    /// <param name="seed">Seed of all chance.</param>
    /// <exception cref="ArgumentException">A visit nobody can make.</exception>
    public CrewSearch(CrewProblem problem, ulong seed)
    {
        _problem = problem;
        _chance = new Chance(seed);
        _clock = new CrewClock(problem);
        _moves = new CrewMoves(problem, _clock, _chance);
        int visits = problem.Visits.Length;
        (_current, _candidate, _best) = (new CrewOrder(visits), new CrewOrder(visits), new CrewOrder(visits));
    }

    /// <summary>Orders tried so far.</summary>
    public long Iterations { get; private set; }

    /// <summary>First temperature as a multiple of the mean way between two places.</summary>
    public double FirstTemperature { get; init; } = 1;

    /// <summary>Last temperature, in the same unit.</summary>
    public double LastTemperature { get; init; } = 0.01;

    /// <summary>Searches until the budget is used up or the caller cancels.</summary>
    /// <param name="budget">How long.</param>
    /// <param name="cancel">Stops within a few milliseconds.</param>
    public CrewPlan Run(ISearchBudget budget, CancellationToken cancel = default)
    {
        Begin();
        _best.CopyFrom(_current);
        _clock.Note(_current);
        _least = _clock.Known;
        if (_problem.Visits.Length == 0) return _clock.Plan(_best);
        for (int start = 0; start < Starts; start++)
        {
            if (start > 0) Begin();
            Anneal(budget, start * StartShare, (start + 1) * StartShare, FirstTemperature, cancel);
        }

        _current.CopyFrom(_best);
        Anneal(budget, Starts * StartShare, 1, FirstTemperature * Reheat, cancel);
        return _clock.Plan(_best);
    }

    private void Begin()
    {
        int at = 0;
        foreach (int visit in Enumerable.Range(0, _problem.Visits.Length).OrderBy(visit => _problem.Visits[visit].Opens + (_problem.Visits[visit].Closes / 2)))
        {
            _current.Order[at++] = visit;
            (int first, int second) = Pair(_problem.Visits[visit]);
            _current.First[visit] = first;
            _current.Second[visit] = second;
        }
    }

    private (int First, int Second) Pair(CrewVisit visit)
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

    private void Anneal(ISearchBudget budget, double from, double until, double first, CancellationToken cancel)
    {
        double unit = _problem.Travel.Average(), temperature = unit;
        _clock.Note(_current);
        long cost = _clock.Known;
        while (true)
        {
            if (Iterations++ % BetweenLooks == 0)
            {
                double used = (budget.Used(Iterations) - from) / (until - from);
                if (used >= 1 || cancel.IsCancellationRequested) return;
                temperature = unit * first * Math.Pow(LastTemperature / first, used);
            }

            _candidate.CopyFrom(_current);
            if (!_moves.Apply(_candidate)) continue;
            long so = _clock.Cost(_candidate);
            if (so >= cost - (temperature * Math.Log(1 - _chance.NextFraction()))) continue;
            cost = so;
            _current.CopyFrom(_candidate);
            _clock.Note(_current);
            Debug.Assert(_clock.Known == cost, "the part walked must cost what the whole walk costs");
            if (cost >= _least) continue;
            _least = cost;
            _best.CopyFrom(_current);
        }
    }
}
