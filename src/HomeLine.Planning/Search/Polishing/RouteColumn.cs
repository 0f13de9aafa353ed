namespace HomeLine.Planning.Search.Polishing;

/// <summary>One way to fill a nurse-day that the search has seen: the units of each visit in order, and what it costs apart from the rest of the plan.</summary>
/// <param name="Route">The nurse-day.</param>
/// <param name="Key">A hash of route and units; two orders of the same units share it.</param>
/// <param name="Visits">Units by visit, in order.</param>
/// <param name="Cost">Blended cost, what is gained by doing the units left aside.</param>
internal sealed record RouteColumn(int Route, ulong Key, int[][] Visits, double Cost)
{
    public IEnumerable<int> Units => Visits.SelectMany(v => v);
}
