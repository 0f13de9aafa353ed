using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>
/// The plan under repair. Every visit has a start it would like to keep: the published one, or the one it was given when it moved. A nurse-day is laid out by
/// keeping these as far as the road allows, so that taking a visit out undoes the pushes it caused.
/// </summary>
internal sealed class MendState
{
    private readonly StandingTable _table;
    private readonly PushTrial _trial;

    /// <summary>By line: specimens that are handed in nowhere in time as published; -1 where nobody asked yet.</summary>
    private readonly int[] _lateBefore;

    public MendState(StandingTable table, PushTrial trial)
    {
        (_table, _trial) = (table, trial);
        Standing = new StandingState(table.Base);
        Anchor = [.. Standing.Start];
        _lateBefore = new int[table.Shifts.Length];
        Array.Fill(_lateBefore, -1);
    }

    public StandingState Standing { get; }

    /// <summary>The start each visit would like.</summary>
    public int[] Anchor { get; }

    public void CopyFrom(MendState other)
    {
        Standing.CopyFrom(other.Standing);
        other.Anchor.CopyTo(Anchor, 0);
    }

    public void TakeOut(int visit)
    {
        int day = CompiledWeek.DayOf(Standing.Start[visit]), nurse = Standing.Nurse[visit], second = Standing.Second[visit];
        Standing.TakeOut(visit);
        LayOut(_table.Line(nurse, day));
        if (second >= 0) LayOut(_table.Line(second, day));
    }

    /// <summary>Puts a visit where a place says; it has been tried with success.</summary>
    public void Put(int visit, in MendPlace place)
    {
        StandingVisit facts = _table.Visits[visit];
        if (place.Into >= 0)
        {
            Join(visit, place);
            return;
        }

        int nurse = _table.NurseOf(place.Line), minutes = _table.MinutesOf(facts, nurse);
        Enter(visit, place.Line, place.Position, place.Start, minutes, facts.DrawToDrop);
        if (place.SecondLine >= 0) Enter(visit, place.SecondLine, place.SecondPosition, place.Start, minutes, int.MaxValue);
        Standing.Nurse[visit] = nurse;
        Standing.Second[visit] = place.SecondLine < 0 ? -1 : _table.NurseOf(place.SecondLine);
        Anchor[visit] = place.Start;
    }

    /// <summary>Starts of a line as liked, pushed where the road asks. The first visit that cannot be kept so, or -1.</summary>
    public int LayOut(int line)
    {
        int failed = Lay(line, byDrops: false);
        if (failed >= 0 || _trial.Drops is not { } drops || !drops.Carries(Standing, line, Standing.On(line).Length)) return failed;
        int before = _lateBefore[line] >= 0 ? _lateBefore[line] : _lateBefore[line] = drops.Read(_table.Base, line);
        int home = _table.NurseOf(line), count = Standing.On(line).Length;
        if (drops.Read(Standing, line) <= before) return -1;
        for (TimeMade made = TimeMade.WhereShortest; made <= TimeMade.AfterEveryDraw; made++)
        {
            Lay(line, byDrops: false);
            drops.Read(Standing, line);
            if (drops.Stops.Make(made, count, home) && Lay(line, byDrops: true) < 0 && drops.Read(Standing, line) <= before) return -1;
        }

        Lay(line, byDrops: false);
        return LastDraw(line);
    }

    /// <summary>The last visit of a line at which she draws and that may go.</summary>
    private int LastDraw(int line)
    {
        ReadOnlySpan<int> order = Standing.On(line);
        for (int i = order.Length - 1; i >= 0; i--)
        {
            if (!_table.Visits[order[i]].Fixed && _trial.Drops!.MostOf(Standing, line, order[i]) != int.MaxValue) return order[i];
        }

        return -1;
    }

    private int Lay(int line, bool byDrops)
    {
        if (_table.Shifts[line] is not { } shift) return -1;
        ReadOnlySpan<int> order = Standing.On(line);
        for (int i = 0; i < order.Length; i++)
        {
            int visit = order[i];
            StandingVisit facts = _table.Visits[visit];
            if (facts.Fixed) continue;
            int start = Anchor[visit], arrival = _trial.ArrivalAt(Standing, line, i, facts.Patient, byDrop: byDrops && i > 0 && _trial.Drops!.Stops.Via[i - 1]);
            if (arrival > start)
            {
                if (Standing.Second[visit] >= 0) return visit;
                start = facts.StartAfter(arrival);
                if (start < 0 || !PushTrial.TiesHold(Standing, facts, start)) return visit;
            }

            Standing.Start[visit] = start;
        }

        return _trial.HomeAt(Standing, line) > shift.OvertimeTo ? LastFree(order) : -1;
    }

    /// <summary>Care that joined another visit stands by itself again, without a visit.</summary>
    public void Part(int visit)
    {
        int into = Standing.MergedInto[visit];
        Standing.MergedInto[visit] = -1;
        int nurse = Standing.Nurse[into], day = CompiledWeek.DayOf(Standing.Start[into]);
        Standing.Minutes[into] = Merging.Minutes(_table, Standing, into);
        LayOut(_table.Line(nurse, day));
    }

    private void Join(int visit, in MendPlace place)
    {
        int into = place.Into, nurse = Standing.Nurse[into];
        Standing.MergedInto[visit] = into;
        Standing.TakeOut(into);
        int draw = _trial.Drops?.MostOf(Standing, place.Line, into) ?? int.MaxValue;
        Enter(into, place.Line, place.Position, place.Start, Merging.Minutes(_table, Standing, into, nurse), draw);
        Standing.Nurse[into] = nurse;
    }

    private int LastFree(ReadOnlySpan<int> order)
    {
        for (int i = order.Length - 1; i >= 0; i--)
        {
            if (!_table.Visits[order[i]].Fixed) return order[i];
        }

        return -1;
    }

    private void Enter(int visit, int line, int position, int start, int minutes, int draw)
    {
        var entering = new Entering(_table.Visits[visit].Patient, minutes, draw);
        _trial.Try(Standing, line, position, entering, start, int.MaxValue / 2);
        _trial.Apply(Standing, line, position, visit, entering);
    }
}

/// <summary>A place for a visit under repair.</summary>
internal readonly record struct MendPlace(int Line, int Position, int Start, int SecondLine = -1, int SecondPosition = 0, int Into = -1);
