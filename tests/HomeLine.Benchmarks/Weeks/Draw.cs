namespace HomeLine.Benchmarks.Weeks;

/// <summary>Seeded draws for invented weeks: a shift register, the same on every machine.</summary>
internal sealed class Draw(int seed)
{
    private ulong _state = ((ulong)(uint)seed * 0x9E3779B97F4A7C15UL) ^ 0xD1B54A32D192ED03UL;

    public int Below(int count)
    {
        _state ^= _state >> 12;
        _state ^= _state << 25;
        _state ^= _state >> 27;
        return (int)(((_state * 0x2545F4914F6CDD1DUL >> 32) * (ulong)count) >> 32);
    }

    /// <summary>True so many times in a hundred.</summary>
    public bool Percent(int of) => Below(100) < of;

    public double Fraction() => Below(1 << 20) / (double)(1 << 20);
}
