namespace HomeLine.Benchmarks.Classic;

/// <summary>One route for people: who or which day, and the stops in order, as the file numbers or names them.</summary>
internal sealed record NamedRoute(string Name, IReadOnlyList<string> Stops);

/// <summary>A solution of one instance, checked.</summary>
internal sealed record Solved(Verdict Verdict, IReadOnlyList<NamedRoute> Routes, IReadOnlyList<string> LeftOut, long Iterations);

/// <summary>How to solve.</summary>
/// <param name="Seconds">Seconds for everything, from <paramref name="AlreadyUsed"/> seconds ago.</param>
/// <param name="Threads">Threads, each with that many seconds.</param>
/// <param name="Seed">Seed of the first thread.</param>
/// <param name="Wall">True to count seconds on the wall.</param>
/// <param name="AlreadyUsed">Seconds spent before, on starting and reading.</param>
/// <param name="Tuning">Settings a measurement may change.</param>
internal sealed record Wanted(double Seconds, int Threads, ulong Seed, bool Wall, double AlreadyUsed, Tuning Tuning)
{
    private readonly TimeBudget _budget = new(Seconds, Wall, AlreadyUsed);

    /// <summary>What is left for the calling thread: what has been used until now counts for all of them.</summary>
    public TimeBudget OfThisThread() => Environment.CurrentManagedThreadId == _thread ? _budget : new TimeBudget(Seconds, Wall, _usedBefore);

    private readonly int _thread = Environment.CurrentManagedThreadId;
    private readonly double _usedBefore = AlreadyUsed;

    /// <summary>The same wish, with the clock started again.</summary>
    public Wanted Again(ulong seed) => new(Seconds, Threads, seed, Wall, 0, Tuning);
}

/// <summary>Settings a measurement may change; null keeps the default.</summary>
internal sealed record Tuning(double? First = null, double? Last = null, double? Ruin = null, int? Near = null, double? Polish = null, double? Overload = null, double? Descend = null, double? AnyDay = null);

/// <summary>An instance of some published set, ready to be solved.</summary>
internal abstract record Instance(string Name, string Format)
{
    /// <summary>What the best-known list calls the conventions this instance is computed in, the one gaps are reported against first.</summary>
    public abstract IReadOnlyList<string> Conventions { get; }

    /// <summary>The group of the set it belongs to.</summary>
    public abstract string Class { get; }

    /// <summary>OR-Tools routing on the same instance, where there is a model for it.</summary>
    public virtual Func<Wanted, Solved>? Peer => null;

    public abstract Solved Solve(Wanted wanted);

    /// <summary>The solution published beside the instance file, judged by the same checker; null where the set has none that is read here.</summary>
    /// <param name="path">The instance file.</param>
    public virtual Verdict? Published(string path) => null;
}
