using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Standing;

/// <summary>Minutes between places read from a map, which has worked out every pair: keeping them once more would only take memory.</summary>
internal sealed class MapTrips(int[] places, MapTravel map) : ITravelTimes
{
    public int Minutes(int from, int to) => map.Minutes(places[from], places[to]);
}
