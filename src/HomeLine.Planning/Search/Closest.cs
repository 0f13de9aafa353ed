namespace HomeLine.Planning.Search;

/// <summary>Picks the few items with the smallest keys, by key and then index, without sorting all of them.</summary>
internal sealed class Closest(int count)
{
    private readonly int[] _keys = new int[count];

    public int[] Of(int wanted, Func<int, int> key)
    {
        int kept = 0, most = Math.Min(wanted, count);
        var items = new int[most];
        for (int item = 0; item < count; item++)
        {
            int k = key(item);
            if (kept == most && (most == 0 || k >= _keys[kept - 1])) continue;
            int at = kept < most ? kept++ : kept - 1;
            for (; at > 0 && _keys[at - 1] > k; at--) (_keys[at], items[at]) = (_keys[at - 1], items[at - 1]);
            (_keys[at], items[at]) = (k, item);
        }

        return items;
    }
}
