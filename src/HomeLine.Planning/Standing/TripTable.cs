using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>Minutes between places, each pair worked out when it is first asked for: an answer to one trouble drives few of them. For one thread.</summary>
internal sealed class TripTable(int[] places, ITravelTimes travel) : ITravelTimes
{
    /// <summary>One more than the minutes; 0 for a pair not asked for yet.</summary>
    private readonly int[] _known = new int[places.Length * places.Length];

    public int Minutes(int from, int to)
    {
        ref int known = ref _known[(from * places.Length) + to];
        if (known == 0) known = travel.Minutes(places[from], places[to]) + 1;
        return known - 1;
    }
}
