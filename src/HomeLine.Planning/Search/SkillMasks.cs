using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Skills as bits, so that asking whether a nurse has all of a set is a few comparisons.</summary>
internal sealed class SkillMasks
{
    private readonly Dictionary<string, int> _bit = new(StringComparer.Ordinal);
    private readonly ulong[][] _nurses;
    private readonly int _words;

    public SkillMasks(WeekProblem problem)
    {
        foreach (string skill in problem.Tasks.SelectMany(t => t.Skills)) _bit.TryAdd(skill, _bit.Count);
        _words = (_bit.Count + 63) >> 6;
        _nurses = [.. problem.Nurses.Select(n => Of(n.Skills))];
    }

    public ulong[] Of(IEnumerable<string> skills)
    {
        var mask = new ulong[_words];
        foreach (string skill in skills)
        {
            if (_bit.TryGetValue(skill, out int bit)) mask[bit >> 6] |= 1UL << (bit & 63);
        }

        return mask;
    }

    public bool Has(int nurse, ulong[] asked)
    {
        for (int w = 0; w < asked.Length; w++)
        {
            if ((asked[w] & ~_nurses[nurse][w]) != 0) return false;
        }

        return true;
    }
}
