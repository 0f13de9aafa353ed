using System.Diagnostics;
using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks;

/// <summary>A budget in seconds of the thread that asks: processor time, or wall time.</summary>
internal sealed class TimeBudget : ISearchBudget
{
    private readonly bool _wall;
    private readonly double _seconds;
    private readonly double _begin;

    /// <param name="seconds">Seconds from now.</param>
    /// <param name="wall">True to count wall time.</param>
    /// <param name="alreadyUsed">Seconds that were spent before, on reading for instance.</param>
    public TimeBudget(double seconds, bool wall, double alreadyUsed = 0)
    {
        _seconds = seconds;
        _wall = wall;
        _begin = Now() - alreadyUsed;
    }

    public double SecondsLeft => Math.Max(0, _seconds - Elapsed);

    public double Elapsed => Now() - _begin;

    public double Used(long iterations) => Elapsed / _seconds;

    private double Now() => _wall ? Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency : CpuClock.ThreadSeconds();
}
