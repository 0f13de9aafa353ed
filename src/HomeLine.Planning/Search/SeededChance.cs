namespace HomeLine.Planning.Search;

/// <summary>
/// A small generator of pseudo-random numbers (xorshift with a multiplied output, Marsaglia 2003 and Vigna 2014), so that the same seed gives the
/// same plan on every machine and runtime.
/// </summary>
internal sealed class SeededChance
{
    private ulong _state;

    public SeededChance(ulong seed)
    {
        // One round of mixing, so that neighbouring seeds start far apart and zero is never the state.
        ulong z = seed + 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        _state = (z ^ (z >> 31)) | 1;
    }

    /// <summary>A number from 0 to <paramref name="below"/>, excluded.</summary>
    public int Next(int below) => (int)(((Draw() >> 32) * (ulong)below) >> 32);

    /// <summary>A number from 0, included, to 1, excluded.</summary>
    public double NextFraction() => (Draw() >> 11) * (1.0 / (1UL << 53));

    private ulong Draw()
    {
        _state ^= _state >> 12;
        _state ^= _state << 25;
        _state ^= _state >> 27;
        return _state * 0x2545F4914F6CDD1DUL;
    }
}
