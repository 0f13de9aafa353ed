namespace HomeLine.Planning.Search;

/// <summary>
/// Several lines of search side by side, each with its own seed. At fixed rounds, never at fixed times, the worst goes on from the best plan of all, so
/// that seed, rounds and number of islands determine the plan.
/// </summary>
internal sealed class Islands(CompiledWeek week, PlanOptions options)
{
    private const int Exchanges = 10, Reports = 50;

    public WeekState Improve(WeekState first, IProgress<PlanProgress>? progress, CancellationToken cancel)
    {
        if (options.Iterations <= 0) return first;
        Trajectory[] lines =
        [
            .. Enumerable.Range(0, Math.Clamp(options.Islands, 1, 64))
                .Select(i => new Trajectory(week, first, options.Seed + ((ulong)i * 0x9E3779B97F4A7C15UL), options.Iterations)),
        ];
        int every = Math.Max(1, options.Iterations / Reports), exchange = Math.Max(1, options.Iterations / Exchanges);
        for (int round = every; ; round = Math.Min(round + every, options.Iterations))
        {
            bool whole = RunAll(lines, Math.Min(round, options.Iterations), cancel);
            Trajectory best = BestOf(lines);
            if (!whole) return best.Best;
            if (PolishAt(round, every)) Polished(lines, ref best, cancel);
            if (progress is not null && round % every == 0) progress.Report(Progress(best, round));
            if (round >= options.Iterations) return best.Best;
            if (round / exchange != (round - every) / exchange) Exchange(lines, best);
        }
    }

    private static bool RunAll(Trajectory[] lines, int round, CancellationToken cancel)
    {
        if (lines.Length == 1) return lines[0].RunTo(round, cancel);
        Parallel.For(0, lines.Length, i => lines[i].RunTo(round, cancel));
        return lines.All(l => l.Round == round);
    }

    /// <summary>At four fifths of the rounds and at the end.</summary>
    private bool PolishAt(int round, int every)
    {
        int fifth = Math.Max(1, options.Iterations / 5);
        return round >= options.Iterations || (round >= 4 * fifth && round / fifth != (round - every) / fifth);
    }

    private static void Polished(Trajectory[] lines, ref Trajectory best, CancellationToken cancel)
    {
        if (lines.Length == 1) lines[0].PolishBest(cancel);
        else Parallel.For(0, lines.Length, i => lines[i].PolishBest(cancel));
        best = BestOf(lines);
    }

    private static Trajectory BestOf(Trajectory[] lines)
    {
        Trajectory best = lines[0];
        foreach (Trajectory line in lines)
        {
            if (line.BestScore < best.BestScore) best = line;
        }

        return best;
    }

    private static void Exchange(Trajectory[] lines, Trajectory best)
    {
        Trajectory worst = lines[0];
        foreach (Trajectory line in lines)
        {
            if (line.BestScore > worst.BestScore) worst = line;
        }

        if (worst.BestScore > best.BestScore) worst.Restart(best.Best);
    }

    private PlanProgress Progress(Trajectory best, int round)
    {
        int visits = 0, unmet = 0;
        for (int r = 0; r < week.Routes.Count; r++) visits += best.Best.Visits[r];
        for (int u = 0; u < week.Units.Count; u++)
        {
            if (best.Best.UnitSlot[u] < 0) unmet += week.Units.Tasks[u].Length;
        }

        return new PlanProgress(round, options.Iterations, best.BestScore, visits, unmet);
    }
}
