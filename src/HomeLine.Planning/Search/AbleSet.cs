namespace HomeLine.Planning.Search;

/// <summary>Which units may be done on which routes, one bit each.</summary>
internal sealed class AbleSet(int units, int routes)
{
    private readonly int _words = (routes + 63) >> 6;
    private readonly ulong[] _bits = new ulong[units * ((routes + 63) >> 6)];

    public bool Has(int unit, int route) => (_bits[(unit * _words) + (route >> 6)] & (1UL << (route & 63))) != 0;

    public void Put(int unit, int route) => _bits[(unit * _words) + (route >> 6)] |= 1UL << (route & 63);
}
