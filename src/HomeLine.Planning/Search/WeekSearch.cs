using HomeLine.Planning.Cost;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Search.Ruins;

namespace HomeLine.Planning.Search;

/// <summary>
/// Ruin and recreate over visits with annealing: take some units out, put them back in another order, accept by the blended cost at a falling
/// temperature, and keep the best plan by the exact score.
/// </summary>
internal sealed class WeekSearch
{
    private const double FirstTemperature = 20, LastTemperature = 0.02;
    private const int LargestRuin = 24;

    private readonly CompiledWeek _week;
    private readonly SearchScore _score;
    private readonly PlanEditor _editor;
    private readonly Insertion _insertion;
    private readonly Recreate _recreate;
    private readonly RuinPick _pick;

    public WeekSearch(CompiledWeek week)
    {
        _week = week;
        var care = new SlotCare(week);
        var timing = new RouteTiming(week, care, new WeekState(week).Width);
        _score = new SearchScore(week, care);
        _editor = new PlanEditor(week, care, timing);
        _insertion = new Insertion(week, care, timing, _score);
        _recreate = new Recreate(week, _insertion, _editor);
        _pick = new RuinPick(week);
        Reading = new PlanReading(week, care, _editor, _insertion);
    }

    public PlanReading Reading { get; }

    /// <summary>Where a unit could still go in a plan; nowhere has an infinite cost.</summary>
    public Proposal PlaceFor(WeekState state, int unit) => _insertion.Best(state, unit);

    public void Put(WeekState state, int unit, in Proposal place) => _editor.Insert(state, unit, place);

    public PlanScore ScoreOf(WeekState state) => _score.Of(state);

    /// <summary>The better of a plan built from nothing and the published plan with its gaps filled.</summary>
    public WeekState First()
    {
        WeekState built = Reading.Fresh();
        new Construction(_week, _insertion, _editor).Fill(built);
        _editor.Settle(built);
        if (_week.Problem.Published is not { Visits.IsDefault: false } published) return built;
        WeekState adopted = Reading.Fresh();
        Reading.Adopt(adopted, published);
        new Construction(_week, _insertion, _editor).Fill(adopted);
        _editor.Settle(adopted);
        return _score.Of(built) < _score.Of(adopted) ? built : adopted;
    }

    public WeekState Improve(WeekState first, PlanOptions options, IProgress<PlanProgress>? progress, CancellationToken cancel)
    {
        var chance = new SeededChance(options.Seed);
        WeekState current = first, candidate = new(_week), best = new(_week);
        best.CopyFrom(first);
        PlanScore bestScore = _score.Of(first);
        double currentCost = Blend.Of(bestScore, _week.Tasks.CriticalPrice), cooling = Cooling(options.Iterations), temperature = FirstTemperature;
        int every = Math.Max(1, options.Iterations / 50);
        bool idle = _week.Units.Count == _week.FixedVisits.Length || _week.Routes.Count == 0;
        for (int round = 0; round < options.Iterations && !idle; round++, temperature *= cooling)
        {
            if (cancel.IsCancellationRequested) break;
            candidate.CopyFrom(current);
            Ruin(candidate, chance);
            _recreate.Apply(candidate, chance);
            _editor.Settle(candidate);
            PlanScore score = _score.Of(candidate);
            double cost = Blend.Of(score, _week.Tasks.CriticalPrice);
            if (score < bestScore)
            {
                bestScore = score;
                best.CopyFrom(candidate);
            }

            double threshold = currentCost - (temperature * Math.Log(1 - chance.NextFraction()));
            if (cost < threshold)
            {
                (current, candidate) = (candidate, current);
                currentCost = cost;
            }

            if (progress is not null && (round + 1) % every == 0) progress.Report(Progress(round + 1, options.Iterations, best, bestScore));
        }

        return best;
    }

    private static double Cooling(int iterations) => Math.Pow(LastTemperature / FirstTemperature, 1.0 / Math.Max(1, iterations));

    private void Ruin(WeekState state, SeededChance chance)
    {
        int most = Math.Min(LargestRuin, Math.Max(4, _week.Units.Count / 4));
        _pick.Begin(1 + chance.Next(most));
        switch (chance.Next(16))
        {
            case < 6: NearbyStrings.Pick(_week, state, chance, _pick); break;
            case < 8: SameNurseDay.Pick(_week, state, chance, _pick); break;
            case < 11: SamePatientWeek.Pick(_week, state, chance, _pick); break;
            case < 13: SameDay.Pick(_week, state, chance, _pick); break;
            case < 15: RandomUnits.Pick(_week, state, chance, _pick); break;
            default: RivalsOfTheUnmet.Pick(_week, state, chance, _pick); break;
        }

        foreach (int unit in _pick.Units) _editor.Remove(state, unit);
    }

    private PlanProgress Progress(int round, int rounds, WeekState best, PlanScore score)
    {
        int visits = 0, unmet = 0;
        for (int r = 0; r < _week.Routes.Count; r++) visits += best.Visits[r];
        foreach (int[] tasks in _week.Units.Tasks.Where((_, u) => best.UnitSlot[u] < 0)) unmet += tasks.Length;
        return new PlanProgress(round, rounds, score, visits, unmet);
    }
}
