using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>The same search on several threads that do not exchange anything, each with a seed of its own; the best answer wins. One thread stays on the caller's.</summary>
internal sealed class Islands<TPlan>(Wanted wanted)
{
    public (TPlan Plan, long Iterations) Best(Func<ulong, ISearchBudget, (TPlan Plan, long Iterations)> search, Func<TPlan, long> cost)
    {
        var found = new (TPlan Plan, long Iterations)[wanted.Threads];
        Thread[] others = [.. Enumerable.Range(1, wanted.Threads - 1).Select(island => new Thread(() => found[island] = search(wanted.Seed + (1000UL * (ulong)island), wanted.OfThisThread())))];
        foreach (Thread other in others) other.Start();
        found[0] = search(wanted.Seed, wanted.OfThisThread());
        foreach (Thread other in others) other.Join();
        return (found.MinBy(answer => cost(answer.Plan)).Plan, found.Sum(answer => answer.Iterations));
    }
}
