namespace HomeLine.Planning.Routing;

/// <summary>
/// The same problem searched on several threads, each with a seed of its own. At fixed numbers of iterations they wait for one another and whoever is behind goes on
/// from the best plan; so the same seed, islands and iterations give the same plan, however fast each thread is.
/// </summary>
/// <param name="problem">The problem.</param>
/// <param name="options">How to search; the seed is that of the first island.</param>
/// <param name="islands">How many, at least 1.</param>
public sealed class RoutingIslands(RoutingProblem problem, RoutingOptions options, int islands)
{
    /// <summary>Own value: how far apart the islands' seeds are.</summary>
    private const ulong BetweenSeeds = 1_000;

    /// <summary>Iterations of all islands together.</summary>
    public long Iterations { get; private set; }

    /// <summary>Searches until every island's budget is used up or the caller cancels; the first island searches on the caller's thread.</summary>
    /// <param name="budget">Asked for a budget on each thread.</param>
    /// <param name="cancel">Stops within a few milliseconds.</param>
    /// <exception cref="ArgumentException">The problem contradicts itself; the message says where.</exception>
    public RoutingPlan Run(Func<ISearchBudget> budget, CancellationToken cancel = default)
    {
        if (problem.Fault() is { } fault) throw new ArgumentException(fault);
        using var meeting = new IslandMeeting(islands);
        var found = new (RoutingPlan Plan, long Iterations)[islands];
        Thread[] others = [.. Enumerable.Range(1, islands - 1).Select(island => new Thread(() => found[island] = Search(island, meeting, budget(), cancel)))];
        foreach (Thread other in others) other.Start();
        found[0] = Search(0, meeting, budget(), cancel);
        foreach (Thread other in others) other.Join();
        Iterations = found.Sum(answer => answer.Iterations);
        return IslandMeeting.BestOf(found.Select(answer => answer.Plan));
    }

    private (RoutingPlan Plan, long Iterations) Search(int island, IslandMeeting meeting, ISearchBudget budget, CancellationToken cancel)
    {
        try
        {
            var search = new RoutingSearch(problem, options with { Seed = options.Seed + (BetweenSeeds * (ulong)island) })
            {
                Meet = islands == 1 ? null : best => meeting.Meet(island, best),
            };
            return (search.Run(budget, cancel: cancel), search.Iterations);
        }
        finally
        {
            meeting.Leave();
        }
    }
}
