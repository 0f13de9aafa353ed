using System.Runtime.CompilerServices;

namespace HomeLine.Planning.Routing;

/// <summary>
/// Seeded pseudo-random numbers: xorshift with a multiplied output (Marsaglia 2003; Vigna 2014). The same seed gives the same numbers on every machine.
/// </summary>
public sealed class Chance
{
    private ulong _state;

    /// <summary>Starts the sequence of one seed; neighbouring seeds start far apart.</summary>
    /// <param name="seed">Any number.</param>
    public Chance(ulong seed) => _state = Mixed(seed) | 1;

    /// <summary>A number from 0, included, to <paramref name="below"/>, excluded.</summary>
    /// <param name="below">Above 0.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int Next(int below) => (int)(((Draw() >> 32) * (ulong)below) >> 32);

    /// <summary>A number from 0, included, to 1, excluded.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double NextFraction() => (Draw() >> 11) * (1.0 / (1UL << 53));

    /// <summary>How many trials of one chance it takes until the first success, at least 1: one draw in place of many.</summary>
    /// <param name="inverseLogOfFailure">1 / ln(1 − chance), a negative number.</param>
    public int NextWait(double inverseLogOfFailure) => 1 + (int)Math.Min(1e9, Math.Log(1 - NextFraction()) * inverseLogOfFailure);

    /// <summary>A well-spread number for any number: one round of the split-mix generator (Steele et al. 2014).</summary>
    /// <param name="number">Any number.</param>
    public static ulong Mixed(ulong number)
    {
        ulong z = number + 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private ulong Draw()
    {
        _state ^= _state >> 12;
        _state ^= _state << 25;
        _state ^= _state >> 27;
        return _state * 0x2545F4914F6CDD1DUL;
    }
}
