using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>Where the nurse of a line hands her specimens in, for a week in which nurses drive to drop points.</summary>
internal sealed class LineDrops
{
    private readonly StandingTable _table;
    private readonly StandingVisit? _newcomer;
    private readonly int _charting;

    public LineDrops(StandingTable table, StandingVisit? newcomer)
    {
        (_table, _newcomer) = (table, newcomer);
        _charting = table.Problem.Rules.DocumentationMinutes;
        Stops = new HandInStops(table.Problem, table.Roads.Leaving, table.PlaceOfDrop);
    }

    public HandInStops Stops { get; }

    /// <summary>Reads a line as it stands; how many specimens are handed in nowhere in time.</summary>
    public int Read(StandingState state, int line)
    {
        ReadOnlySpan<int> order = state.On(line);
        Stops.Reserve(order.Length + 1);
        for (int i = 0; i < order.Length; i++) Seat(state, line, i, order[i], state.Start[order[i]]);
        return Stops.Read(order.Length, _table.NurseOf(line));
    }

    /// <summary>Whether the nurse of a line draws at any of its visits before a position.</summary>
    public bool Carries(StandingState state, int line, int position)
    {
        ReadOnlySpan<int> order = state.On(line);
        for (int i = 0; i < position; i++)
        {
            if (MostOf(state, line, order[i]) != int.MaxValue) return true;
        }

        return false;
    }

    /// <summary>Notes a visit that stands in a line.</summary>
    public void Seat(StandingState state, int line, int position, int visit, int start) => Stops.Seats[position] = new DropSeat(
        _table.PlaceOf(FactsOf(visit).Patient),
        start,
        start + state.Minutes[visit] + _charting,
        MostOf(state, line, visit),
        FactsOf(visit).Fixed);

    /// <summary>Notes a visit about to enter.</summary>
    public void Seat(int position, in Entering visit, int start) =>
        Stops.Seats[position] = new DropSeat(_table.PlaceOf(visit.Patient), start, start + visit.Minutes + _charting, visit.Draw, false);

    /// <summary>Most minutes to a drop point of what is drawn at a visit, care that joined it included; a second person draws nothing.</summary>
    public int MostOf(StandingState state, int line, int visit)
    {
        if (state.Second[visit] == _table.NurseOf(line)) return int.MaxValue;
        int most = FactsOf(visit).DrawToDrop;
        foreach (int mate in _table.OfPatient[FactsOf(visit).Patient])
        {
            if (state.MergedInto[mate] == visit) most = Math.Min(most, _table.Visits[mate].DrawToDrop);
        }

        return most;
    }

    private StandingVisit FactsOf(int visit) => visit < _table.Visits.Length ? _table.Visits[visit] : _newcomer!;
}
