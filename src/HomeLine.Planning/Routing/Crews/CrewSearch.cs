using System.Diagnostics;

namespace HomeLine.Planning.Routing.Crews;

/// <summary>
/// Simulated annealing over one order of all visits and who goes (the representation is that of priority-order decoding; the moves are our own). Anytime, and the
/// same for the same seed and number of iterations.
/// </summary>
public sealed class CrewSearch
{
    private const int BetweenLooks = 256;

    private readonly CrewProblem _problem;
    private readonly Chance _chance;
    private readonly CrewClock _clock;
    private readonly CrewMoves _moves;
    private readonly CrewOrder _current, _candidate, _best;

    /// <summary>Prepares a search.</summary>
    /// <param name="problem">The problem; every visit must have somebody able, and two different people where it needs two.</param>
    /// <param name="seed">Seed of all chance.</param>
    /// <exception cref="ArgumentException">A visit nobody can make.</exception>
    public CrewSearch(CrewProblem problem, ulong seed)
    {
        _problem = problem;
        _chance = new Chance(seed);
        _clock = new CrewClock(problem);
        _moves = new CrewMoves(problem, _chance);
        int visits = problem.Visits.Length;
        (_current, _candidate, _best) = (new CrewOrder(visits), new CrewOrder(visits), new CrewOrder(visits));
    }

    /// <summary>Orders tried so far.</summary>
    public long Iterations { get; private set; }

    /// <summary>First temperature as a multiple of the mean way between two places.</summary>
    public double FirstTemperature { get; init; } = 0.3;

    /// <summary>Last temperature, in the same unit.</summary>
    public double LastTemperature { get; init; } = 0.01;

    /// <summary>Searches until the budget is used up or the caller cancels.</summary>
    /// <param name="budget">How long.</param>
    /// <param name="cancel">Stops within a few milliseconds.</param>
    public CrewPlan Run(ISearchBudget budget, CancellationToken cancel = default)
    {
        Begin();
        _best.CopyFrom(_current);
        if (_problem.Visits.Length > 0) Anneal(budget, cancel);
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

    private void Anneal(ISearchBudget budget, CancellationToken cancel)
    {
        double unit = _problem.Travel.Average(), temperature = unit;
        _clock.Note(_current);
        long cost = _clock.Known, least = cost;
        for (long iteration = 0; ; iteration++, Iterations++)
        {
            if (iteration % BetweenLooks == 0)
            {
                double used = budget.Used(iteration);
                if (used >= 1 || cancel.IsCancellationRequested) return;
                temperature = unit * FirstTemperature * Math.Pow(LastTemperature / FirstTemperature, used);
            }

            _candidate.CopyFrom(_current);
            if (!_moves.Apply(_candidate)) continue;
            long so = _clock.Cost(_candidate);
            if (so >= cost - (temperature * Math.Log(1 - _chance.NextFraction()))) continue;
            cost = so;
            _current.CopyFrom(_candidate);
            _clock.Note(_current);
            Debug.Assert(_clock.Known == cost, "the part walked must cost what the whole walk costs");
            if (cost >= least) continue;
            least = cost;
            _best.CopyFrom(_current);
        }
    }
}
