namespace HomeLine.Planning.Search;

/// <summary>
/// A first plan: two-person and tightly timed care first, then always the unit that would lose most by waiting (regret insertion over nurse-days).
/// Large problems take the units tightest first instead, since regret looks at every pair.
/// </summary>
internal sealed class Construction(CompiledWeek week, Insertion insertion, PlanEditor editor)
{
    private const int LargestForRegret = 120;

    public void Fill(WeekState state, CancellationToken cancel)
    {
        List<int> open = [.. Enumerable.Range(0, week.Units.Count).Where(u => state.UnitSlot[u] < 0 && week.Units.Choices[u] > 0)];
        foreach (int unit in open.Where(u => open.Count > LargestForRegret || IsTight(u)).OrderBy(week.Units.Choices.ElementAt).ThenBy(u => u).ToList())
        {
            if (cancel.IsCancellationRequested) return;
            if (open.Count <= LargestForRegret) open.Remove(unit);
            Put(state, unit, NearOrFar(state, unit));
        }

        if (open.Count > LargestForRegret) return;
        insertion.WantsSecond = true;

        while (open.Count > 0 && !cancel.IsCancellationRequested)
        {
            (int unit, Proposal place) = MostRegretted(state, open);
            open.Remove(unit);
            Put(state, unit, place);
        }

        insertion.WantsSecond = false;
    }

    private Proposal NearOrFar(WeekState state, int unit)
    {
        Proposal near = insertion.Best(state, unit);
        return near.Cost < 0 ? near : insertion.Best(state, unit, everybody: true);
    }

    private bool IsTight(int unit) => week.People.Crew[week.Units.Patient[unit]] > 1 || week.Units.Choices[unit] <= 1
        || week.Units.Tasks[unit].Any(t => !week.Problem.Tasks[t].StartSpans.IsEmpty || week.Tasks.Critical[t]);

    private (int Unit, Proposal Place) MostRegretted(WeekState state, List<int> open)
    {
        (int Unit, Proposal Place, double Regret) worst = (open[0], Proposal.Nowhere, double.NegativeInfinity);
        foreach (int unit in open)
        {
            Proposal place = insertion.Best(state, unit);
            double regret = double.IsInfinity(place.Cost) ? -1 : Math.Min(insertion.SecondCost - place.Cost, 1e9);
            if (regret > worst.Regret) worst = (unit, place, regret);
        }

        return (worst.Unit, worst.Place);
    }

    private void Put(WeekState state, int unit, in Proposal place)
    {
        if (place.Cost < 0) editor.Insert(state, unit, place);
    }
}
