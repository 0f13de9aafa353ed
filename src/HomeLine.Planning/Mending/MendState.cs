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

    public MendState(StandingTable table, PushTrial trial)
    {
        (_table, _trial) = (table, trial);
        Standing = new StandingState(table.Base);
        Anchor = [.. Standing.Start];
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
        Enter(visit, place.Line, place.Position, place.Start, minutes);
        if (place.SecondLine >= 0) Enter(visit, place.SecondLine, place.SecondPosition, place.Start, minutes);
        Standing.Nurse[visit] = nurse;
        Standing.Second[visit] = place.SecondLine < 0 ? -1 : _table.NurseOf(place.SecondLine);
        Anchor[visit] = place.Start;
    }

    /// <summary>Starts of a line as liked, pushed where the road asks. The first visit that cannot be kept so, or -1.</summary>
    public int LayOut(int line)
    {
        if (_table.Shifts[line] is not { } shift) return -1;
        ReadOnlySpan<int> order = Standing.On(line);
        for (int i = 0; i < order.Length; i++)
        {
            int visit = order[i];
            StandingVisit facts = _table.Visits[visit];
            if (facts.Fixed) continue;
            int start = Anchor[visit], arrival = _trial.ArrivalAt(Standing, line, i, facts.Patient);
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
        Enter(into, place.Line, place.Position, place.Start, Merging.Minutes(_table, Standing, into, nurse));
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

    private void Enter(int visit, int line, int position, int start, int minutes)
    {
        var entering = new Entering(_table.Visits[visit].Patient, minutes);
        _trial.Try(Standing, line, position, entering, start, int.MaxValue / 2);
        _trial.Apply(Standing, line, position, visit, entering);
    }
}

/// <summary>A place for a visit under repair.</summary>
internal readonly record struct MendPlace(int Line, int Position, int Start, int SecondLine = -1, int SecondPosition = 0, int Into = -1);
