namespace HomeLine.Planning.Routing.Unloading;

/// <summary>
/// Ruin and recreate with annealing: a few neighbouring customers leave all their days and go back one after another, each with the pattern and the positions that
/// add least once the places of unloading are chosen anew. Anytime, and the same for the same seed and number of iterations.
/// </summary>
public sealed class UnloadingSearch
{
    private const int BetweenLooks = 16;

    /// <summary>Own values: most customers taken out, price of a minute too long in mean legs, chance in a hundred that a position or a pattern is overlooked.</summary>
    private const int MostOut = 6;
    private const double PriceOfExcess = 2;
    private const int Overlooked = 2;

    private readonly UnloadingProblem _problem;
    private readonly UnloadingTrips _trips;
    private readonly Chance _chance;
    private readonly UnloadingState _current, _candidate, _best;
    private readonly int[][] _near;
    private readonly int[] _out, _trial;
    private readonly double _leg;
    private readonly long _priceOfExcess;
    private int _outCount;

    /// <summary>Prepares a search.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="seed">Seed of all chance.</param>
    /// <exception cref="ArgumentException">No place for unloading, or a customer above the capacity or without a pattern.</exception>
    public UnloadingSearch(UnloadingProblem problem, ulong seed)
    {
        if (problem.Facilities.IsDefaultOrEmpty) throw new ArgumentException("There is no place for unloading.");
        if (problem.Customers.FirstOrDefault(customer => customer.Demand > problem.Capacity || customer.Patterns.IsDefaultOrEmpty) is { } odd)
            throw new ArgumentException($"The customer at place {odd.Place} takes more than the capacity or has no pattern.");
        _problem = problem;
        _trips = new UnloadingTrips(problem);
        _chance = new Chance(seed);
        (_current, _candidate, _best) = (new UnloadingState(problem), new UnloadingState(problem), new UnloadingState(problem));
        int[] all = [.. Enumerable.Range(0, problem.Customers.Length)];
        _near = [.. all.Select(one => all.OrderBy(other => Apart(one, other)).ToArray())];
        _out = new int[problem.Customers.Length];
        _trial = new int[problem.Customers.Length + 1];
        _leg = problem.Travel.Length == 0 ? 1 : problem.Travel.Average();
        _priceOfExcess = (long)Math.Max(1, _leg * PriceOfExcess);
    }

    /// <summary>Plans tried so far.</summary>
    public long Iterations { get; private set; }

    /// <summary>First temperature as a multiple of the mean way between two places.</summary>
    public double FirstTemperature { get; init; } = 0.5;

    /// <summary>Last temperature, in the same unit.</summary>
    public double LastTemperature { get; init; } = 0.01;

    /// <summary>Searches until the budget is used up or the caller cancels.</summary>
    /// <param name="budget">How long.</param>
    /// <param name="cancel">Stops within a few milliseconds.</param>
    public UnloadingPlan Run(ISearchBudget budget, CancellationToken cancel = default)
    {
        for (int customer = 0; customer < _problem.Customers.Length; customer++) PutBack(_current, customer);
        _best.CopyFrom(_current);
        double temperature = 0;
        for (; _problem.Customers.Length > 0; Iterations++)
        {
            if (Iterations % BetweenLooks == 0)
            {
                double used = budget.Used(Iterations);
                if (used >= 1 || cancel.IsCancellationRequested) break;
                temperature = _leg * FirstTemperature * Math.Pow(LastTemperature / FirstTemperature, used);
            }

            _candidate.CopyFrom(_current);
            TakeOut(_candidate);
            for (int i = 0; i < _outCount; i++) PutBack(_candidate, _out[i]);
            if (_candidate.Total >= _current.Total - (temperature * Math.Log(1 - _chance.NextFraction()))) continue;
            _current.CopyFrom(_candidate);
            if (_current.Total < _best.Total) _best.CopyFrom(_current);
        }

        return Plan();
    }

    private void TakeOut(UnloadingState state)
    {
        int[] near = _near[_chance.Next(_near.Length)];
        int wanted = 1 + _chance.Next(Math.Min(MostOut, near.Length));
        _outCount = 0;
        for (int i = 0; i < near.Length && _outCount < wanted; i++)
            if (_chance.Next(3) > 0 || near.Length - i <= wanted - _outCount)
                _out[_outCount++] = near[i];
        for (int i = _outCount - 1; i > 0; i--)
        {
            int other = _chance.Next(i + 1);
            (_out[i], _out[other]) = (_out[other], _out[i]);
        }

        for (int i = 0; i < _outCount; i++)
            for (int round = 0; round < state.Count.Length; round++)
                if ((state.Pattern[_out[i]] >> (round / _problem.Vehicles) & 1) != 0 && state.Remove(round, _out[i]))
                    Price(state, round);
        for (int i = 0; i < _outCount; i++) state.Pattern[_out[i]] = 0;
    }

    private void Price(UnloadingState state, int round)
    {
        long cost = Cost(state.Stops[round].AsSpan(0, state.Count[round]));
        state.Total += cost - state.Cost[round];
        state.Cost[round] = cost;
    }

    private long Cost(ReadOnlySpan<int> customers)
    {
        (int travel, int excess) = _trips.Of(customers);
        return travel + (excess * _priceOfExcess);
    }

    private void PutBack(UnloadingState state, int customer)
    {
        Span<int> round = stackalloc int[_problem.Days], at = stackalloc int[_problem.Days];
        Span<long> added = stackalloc long[_problem.Days];
        for (int day = 0; day < _problem.Days; day++)
            if (_problem.Customers[customer].Patterns.Any(pattern => (pattern >> day & 1) != 0))
                (round[day], at[day], added[day]) = BestOn(state, day, customer);
        int chosen = 0;
        long least = long.MaxValue;
        foreach (int pattern in _problem.Customers[customer].Patterns)
        {
            long sum = 0;
            for (int day = 0; day < _problem.Days; day++)
                if ((pattern >> day & 1) != 0)
                    sum += added[day];
            if (sum < least && (chosen == 0 || _chance.Next(100) >= Overlooked)) (chosen, least) = (pattern, sum);
        }

        state.Pattern[customer] = chosen;
        for (int day = 0; day < _problem.Days; day++)
        {
            if ((chosen >> day & 1) == 0) continue;
            state.Insert(round[day], at[day], customer);
            state.Cost[round[day]] += added[day];
            state.Total += added[day];
        }
    }

    private (int Round, int At, long Added) BestOn(UnloadingState state, int day, int customer)
    {
        (int Round, int At, long Added) best = (-1, 0, long.MaxValue);
        for (int vehicle = 0; vehicle < _problem.Vehicles; vehicle++)
        {
            int round = (day * _problem.Vehicles) + vehicle, count = state.Count[round];
            Span<int> trial = _trial.AsSpan(0, count + 1);
            trial[0] = customer;
            state.Stops[round].AsSpan(0, count).CopyTo(trial[1..]);
            for (int at = 0; at <= count; at++)
            {
                if (at > 0) (trial[at - 1], trial[at]) = (trial[at], customer);
                if (best.Round >= 0 && _chance.Next(100) < Overlooked) continue;
                long added = Cost(trial) - state.Cost[round];
                if (added < best.Added) best = (round, at, added);
            }

            if (count == 0) break;
        }

        return best;
    }

    private int Apart(int a, int b)
    {
        int one = _problem.Customers[a].Place, two = _problem.Customers[b].Place;
        return Math.Min(_problem.Travel[(one * _problem.Places) + two], _problem.Travel[(two * _problem.Places) + one]);
    }

    private UnloadingPlan Plan()
    {
        var rounds = new List<UnloadingRound>();
        long cost = 0, excess = 0;
        for (int round = 0; round < _best.Count.Length; round++)
        {
            ReadOnlySpan<int> stops = _best.Stops[round].AsSpan(0, _best.Count[round]);
            if (stops.Length == 0) continue;
            (int travel, int over) = _trips.Of(stops);
            (cost, excess) = (cost + travel, excess + over);
            rounds.Add(new UnloadingRound(round / _problem.Vehicles, [.. _trips.Places(stops)]));
        }

        return new UnloadingPlan([.. rounds], cost, excess);
    }
}
