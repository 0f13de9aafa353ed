using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>Who makes which visit when, nurse-day by nurse-day; copied freely, since it is small.</summary>
internal sealed class StandingState
{
    private readonly StandingTable _table;
    private readonly int[] _line;
    private readonly int[] _count;
    private readonly int _width;

    public StandingState(StandingTable table)
    {
        _table = table;
        int visits = table.Visits.Length + 1, lines = table.Problem.Nurses.Length * table.Days;
        Nurse = new int[visits];
        Second = new int[visits];
        Start = new int[visits];
        Minutes = new int[visits];
        MergedInto = new int[visits];
        _count = new int[lines];
        for (int v = 0; v < visits - 1; v++)
        {
            _count[table.Line(table.Visits[v].WasNurse, DayOf(table.Visits[v].Was.Start))]++;
            if (table.Visits[v].WasSecond >= 0) _count[table.Line(table.Visits[v].WasSecond, DayOf(table.Visits[v].Was.Start))]++;
        }

        _width = (lines == 0 ? 0 : _count.Max()) + 12;
        _line = new int[lines * _width];
        Array.Clear(_count);
        Array.Fill(Nurse, -1);
        Array.Fill(Second, -1);
        Array.Fill(MergedInto, -1);
        for (int v = 0; v < visits - 1; v++) Put(v);
    }

    /// <summary>A copy.</summary>
    public StandingState(StandingState other)
    {
        _table = other._table;
        _width = other._width;
        Nurse = [.. other.Nurse];
        Second = [.. other.Second];
        Start = [.. other.Start];
        Minutes = [.. other.Minutes];
        MergedInto = [.. other.MergedInto];
        _count = [.. other._count];
        _line = [.. other._line];
    }

    /// <summary>By visit; -1 when it is not in the plan at present. The last one is a visit to be tried.</summary>
    public int[] Nurse { get; }

    public int[] Second { get; }

    public int[] Start { get; }

    public int[] Minutes { get; }

    /// <summary>By visit: the visit that does its care as well; -1 when it stands by itself or nobody does it.</summary>
    public int[] MergedInto { get; }

    /// <summary>The index of the visit to be tried.</summary>
    public int Newcomer => Nurse.Length - 1;

    public ReadOnlySpan<int> On(int line) => _line.AsSpan(line * _width, _count[line]);

    /// <summary>Whether one more visit fits the tables.</summary>
    public bool HasRoom(int line) => _count[line] < _width;

    public void CopyFrom(StandingState other)
    {
        other.Nurse.CopyTo(Nurse, 0);
        other.Second.CopyTo(Second, 0);
        other.Start.CopyTo(Start, 0);
        other.Minutes.CopyTo(Minutes, 0);
        other.MergedInto.CopyTo(MergedInto, 0);
        other._count.CopyTo(_count, 0);
        other._line.CopyTo(_line, 0);
    }

    public void TakeOut(int visit)
    {
        int day = DayOf(Start[visit]);
        Drop(visit, _table.Line(Nurse[visit], day));
        if (Second[visit] >= 0) Drop(visit, _table.Line(Second[visit], day));
        (Nurse[visit], Second[visit]) = (-1, -1);
    }

    public void Insert(int visit, int line, int position)
    {
        int at = line * _width, count = _count[line]++;
        for (int i = count; i > position; i--) _line[at + i] = _line[at + i - 1];
        _line[at + position] = visit;
    }

    private void Put(int v)
    {
        StandingVisit visit = _table.Visits[v];
        (Nurse[v], Second[v], Start[v], Minutes[v]) = (visit.WasNurse, visit.WasSecond, visit.Was.Start, visit.Was.Minutes);
        int line = _table.Line(Nurse[v], DayOf(Start[v]));
        Insert(v, line, _count[line]);
        if (Second[v] < 0 || Second[v] == Nurse[v]) return;
        line = _table.Line(Second[v], DayOf(Start[v]));
        Insert(v, line, _count[line]);
    }

    private void Drop(int visit, int line)
    {
        int at = line * _width, position = On(line).IndexOf(visit);
        if (position < 0) return;
        int count = --_count[line];
        for (int i = position; i < count; i++) _line[at + i] = _line[at + i + 1];
    }

    private static int DayOf(int minute) => CompiledWeek.DayOf(minute);
}
