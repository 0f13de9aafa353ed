using HomeLine.Planning.Cost;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Standing;

/// <summary>
/// Puts a visit into a nurse-day on trial: it starts at a given minute, later visits are pushed only as far as the road asks, and whoever is not pushed keeps
/// the start that was promised. Nothing is allocated.
/// </summary>
internal sealed class PushTrial(StandingTable table, StandingVisit? newcomer = null)
{
    /// <summary>Points of late critical care weigh so much more than others when pushes are compared.</summary>
    public const long CriticalWeight = 1_000_000;

    private readonly int[] _order = new int[256];
    private readonly int[] _starts = new int[256];
    private readonly int _charting = table.Problem.Rules.DocumentationMinutes;
    private readonly PlanningRules _rules = table.Problem.Rules;
    private readonly LineDrops? _drops = table.Problem.Rules.HandInMinutes is null ? null : new LineDrops(table, newcomer);
    private int _count;

    /// <summary>The day being tried draws, and drives to a drop point.</summary>
    private bool _draws;

    /// <summary>Where nurses drive to drop points: where they do so on a line.</summary>
    public LineDrops? Drops => _drops;

    /// <summary>When the nurse reaches a patient if she goes there after the visit before a position; never leaving before now.</summary>
    /// <param name="state">Who makes which visit when.</param>
    /// <param name="line">The nurse-day.</param>
    /// <param name="position">Visits of it that come before.</param>
    /// <param name="patient">Where she goes.</param>
    /// <param name="notBefore">She does not pause before it.</param>
    /// <param name="pause">Minutes she pauses before she leaves.</param>
    /// <param name="byDrop">She hands in on the way what she carries.</param>
    public int ArrivalAt(StandingState state, int line, int position, int patient, int notBefore = int.MinValue, int pause = 0, bool byDrop = false)
    {
        ReadOnlySpan<int> order = state.On(line);
        int leave = position == 0 ? table.Shifts[line]!.From : Leave(state, order[position - 1]);
        int from = position == 0 ? table.NurseOf(line) : PlaceOf(order[position - 1]);
        leave = Math.Max(Math.Max(leave, table.Problem.Now), notBefore) + pause;
        int to = table.PlaceOf(patient);
        return leave + (byDrop && position > 0 ? _drops!.Stops.Shortest(from, to, leave).Minutes : table.Roads.Leaving(from, to, leave));
    }

    /// <summary>In how many ways she may come to a position: straight, and where she carries specimens also with time made to hand them in.</summary>
    public int WaysTo(StandingState state, int line, int position) => _drops is not null && _drops.Carries(state, line, position) ? 2 : 1;

    /// <summary>A visit at a position and a start, home by a time; nothing is changed.</summary>
    public Push Try(StandingState state, int line, int position, in Entering visit, int start, int homeBy)
    {
        Lay(state, line, position, start);
        int most = table.Problem.Nurses[table.NurseOf(line)].MaxVisitsADay;
        _draws = _drops is not null && (visit.Draw != int.MaxValue || _drops.Carries(state, line, state.On(line).Length));
        Push pushed = PushOn(state, position, visit, homeBy, line);
        if (pushed.Fault != PushFault.None) return pushed;
        if (_count > most) return Push.Not(PushFault.TooMany);
        if (_draws) pushed = WithDrops(state, line, position, visit, start, pushed);
        if (pushed.Fault != PushFault.None) return pushed;
        return pushed.Amount > homeBy ? Push.Not(PushFault.Overruns, -1, pushed.Amount - homeBy) : Measure(state, line, position, visit, pushed, homeBy);
    }

    /// <summary>The day with time made for drop points where its starts leave too little: the way that pushes least first.</summary>
    private Push WithDrops(StandingState state, int line, int position, in Entering visit, int start, in Push plain)
    {
        HandInStops stops = _drops!.Stops;
        int home = table.NurseOf(line), before = _drops.Read(state, line);
        if (Late(state, line, position, visit) <= before) return plain with { Amount = plain.Amount + stops.Extra[_count - 1] };
        for (TimeMade made = TimeMade.WhereShortest; made <= TimeMade.AfterEveryDraw; made++)
        {
            // The way where it is shortest is read from the starts without any time made.
            Lay(state, line, position, start);
            PushOn(state, position, visit, int.MaxValue / 2, line);
            SeatAll(state, line, position, visit);
            if (!stops.Make(made, _count, home)) continue;
            Push pushed = PushOn(state, position, visit, int.MaxValue / 2, line, byDrops: true);
            if (pushed.Fault == PushFault.None && Late(state, line, position, visit) <= before) return pushed with { Amount = pushed.Amount + stops.Extra[_count - 1] };
        }

        return Push.Not(PushFault.NoDrop);
    }

    private int Late(StandingState state, int line, int position, in Entering visit)
    {
        SeatAll(state, line, position, visit);
        return _drops!.Stops.Read(_count, table.NurseOf(line));
    }

    private void SeatAll(StandingState state, int line, int position, in Entering visit)
    {
        _drops!.Stops.Reserve(_count + 1);
        for (int i = 0; i < _count; i++)
        {
            if (i == position) _drops.Seat(i, visit, _starts[i]);
            else _drops.Seat(state, line, i, _order[i], _starts[i]);
        }
    }

    private int Extra(int position) => _draws ? _drops!.Stops.Extra[position] : 0;

    /// <summary>Minutes of driving a patient would add at a position, times of day aside.</summary>
    public int Detour(StandingState state, int line, int position, int patient)
    {
        ReadOnlySpan<int> order = state.On(line);
        int nurse = table.NurseOf(line), here = table.PlaceOf(patient), noon = (table.DayOf(line) * 1440) + 720;
        int before = position == 0 ? nurse : PlaceOf(order[position - 1]), after = position == order.Length ? nurse : PlaceOf(order[position]);
        int straight = order.Length == 0 ? 0 : table.Roads.Leaving(before, after, noon);
        return table.Roads.Leaving(before, here, noon) + table.Roads.Leaving(here, after, noon) - straight;
    }

    /// <summary>Makes the change that was last tried with success, with the visit's index in the tables.</summary>
    public void Apply(StandingState state, int line, int position, int index, in Entering visit)
    {
        for (int i = 0; i < _count; i++)
        {
            if (i != position) state.Start[_order[i]] = _starts[i];
        }

        state.Start[index] = _starts[position];
        state.Minutes[index] = visit.Minutes;
        state.Insert(index, line, position);
    }

    /// <summary>Minutes of driving of a line as it stands.</summary>
    public int Driving(StandingState state, int line)
    {
        ReadOnlySpan<int> order = state.On(line);
        if (order.Length == 0) return 0;
        int nurse = table.NurseOf(line), place = nurse, minutes = 0, leave = 0;
        for (int i = 0; i < order.Length; i++)
        {
            int here = PlaceOf(order[i]);
            minutes += i == 0 ? table.Roads.Reaching(place, here, state.Start[order[0]]) : table.Roads.Leaving(place, here, leave);
            (place, leave) = (here, Leave(state, order[i]));
        }

        return minutes + table.Roads.Leaving(place, nurse, leave) + ExtraOf(state, line, 0);
    }

    /// <summary>When a nurse is home, break aside; the smallest number for an empty day.</summary>
    public int HomeAt(StandingState state, int line)
    {
        ReadOnlySpan<int> order = state.On(line);
        if (order.Length == 0) return int.MinValue;
        int leave = Leave(state, order[^1]);
        return leave + table.Roads.Leaving(PlaceOf(order[^1]), table.NurseOf(line), leave) + ExtraOf(state, line, order.Length - 1);
    }

    /// <summary>Minutes that stops at drop points add to a line as it stands, from a position on.</summary>
    private int ExtraOf(StandingState state, int line, int from)
    {
        int count = state.On(line).Length, minutes = 0;
        if (_drops is null || !_drops.Carries(state, line, count)) return 0;
        _drops.Read(state, line);
        for (int i = from; i < count; i++) minutes += _drops.Stops.Extra[i];
        return minutes;
    }

    /// <summary>Whether a line as it stands leaves room for its break and ends in time with it.</summary>
    public bool BreakHolds(StandingState state, int line)
    {
        ReadOnlySpan<int> order = state.On(line);
        if (table.Shifts[line] is not { LunchMinutes: > 0 } shift || order.Length == 0) return true;
        _count = order.Length;
        for (int i = 0; i < order.Length; i++) (_order[i], _starts[i]) = (order[i], state.Start[order[i]]);
        int back = HomeAt(state, line);
        _draws = _drops is not null && _drops.Carries(state, line, order.Length);
        return BreakFits(state, line, -1, default, ref back) && back <= shift.OvertimeTo;
    }

    /// <summary>Points of lateness of a visit's care at a start.</summary>
    public long LateAt(StandingVisit visit, int start)
    {
        if (start < visit.LateFrom) return 0;
        long points = 0;
        foreach (CareTask task in visit.Care)
        {
            if (start < task.LateFrom) continue;
            long late = LateCost.Late(_rules, task.Critical, task.Weight, (long)start - task.LateFrom);
            points += task.Critical ? late * CriticalWeight : late;
        }

        return points;
    }

    private void Lay(StandingState state, int line, int position, int start)
    {
        ReadOnlySpan<int> order = state.On(line);
        _count = order.Length + 1;
        for (int i = 0; i < order.Length; i++)
        {
            int at = i < position ? i : i + 1;
            (_order[at], _starts[at]) = (order[i], state.Start[order[i]]);
        }

        (_order[position], _starts[position]) = (state.Newcomer, start);
    }

    private Push PushOn(StandingState state, int position, in Entering visit, int homeBy, int line, bool byDrops = false)
    {
        int leave = _starts[position] + visit.Minutes + _charting, place = table.PlaceOf(visit.Patient);
        for (int i = position + 1; i < _count; i++)
        {
            int index = _order[i], here = PlaceOf(index);
            int arrival = leave + (byDrops && _drops!.Stops.Via[i - 1] ? _drops.Stops.Shortest(place, here, leave).Minutes : table.Roads.Leaving(place, here, leave));
            if (arrival > _starts[i])
            {
                StandingVisit next = FactsOf(index);
                if (next.Fixed || index == state.Newcomer || state.Second[index] >= 0) return Push.Not(PushFault.InTheWay, index);
                int start = next.StartAfter(arrival);
                if (start < 0 || !TiesHold(state, next, start)) return Push.Not(PushFault.LaterTooLate, index, arrival);
                _starts[i] = start;
            }
            else if (!byDrops) break;

            (leave, place) = (_starts[i] + state.Minutes[index] + _charting, here);
        }

        int last = _order[_count - 1];
        int lastLeave = _starts[_count - 1] + (_count - 1 == position ? visit.Minutes : state.Minutes[last]) + _charting;
        int lastPlace = _count - 1 == position ? table.PlaceOf(visit.Patient) : PlaceOf(last);
        int back = lastLeave + table.Roads.Leaving(lastPlace, table.NurseOf(line), lastLeave);
        return back > homeBy ? Push.Not(PushFault.Overruns, -1, back - homeBy) : new Push(PushFault.None, _starts[position], Amount: back);
    }

    private Push Measure(StandingState state, int line, int position, in Entering visit, in Push pushed, int homeBy)
    {
        int moved = 0, disruption = 0;
        long late = 0;
        for (int i = 0; i < _count; i++)
        {
            int index = _order[i];
            if (i == position || index == state.Newcomer) continue;
            StandingVisit other = FactsOf(index);
            if (other.Told && DisruptionPrice.Felt(other, state.Nurse[index], state.Second[index], _starts[i])) moved++;
            if (_starts[i] == state.Start[index]) continue;
            disruption += DisruptionPrice.Of(_rules.Disruption, other, state.Nurse[index], state.Second[index], _starts[i])
                - DisruptionPrice.Of(_rules.Disruption, other, state.Nurse[index], state.Second[index], state.Start[index]);
            late += LateAt(other, _starts[i]) - LateAt(other, state.Start[index]);
        }

        int back = pushed.Amount, extra = 0;
        for (int i = 0; i < _count && _draws; i++) extra += _drops!.Stops.Extra[i];
        if (!BreakFits(state, line, position, visit, ref back) || back > homeBy) return Push.Not(PushFault.NoBreak);
        int to = table.Shifts[line]!.To, overtime = Math.Max(0, back - to) - Math.Max(0, HomeAt(state, line) - to);
        int driving = Detour(state, line, position, visit) + extra - (_draws ? ExtraOf(state, line, 0) : 0);
        return new Push(PushFault.None, pushed.Start, moved, disruption, driving, overtime, late);
    }

    private int Detour(StandingState state, int line, int position, in Entering visit)
    {
        int nurse = table.NurseOf(line), here = table.PlaceOf(visit.Patient), start = _starts[position], leave = start + visit.Minutes + _charting;
        int before = position == 0 ? nurse : PlaceOf(_order[position - 1]), after = position == _count - 1 ? nurse : PlaceOf(_order[position + 1]);
        int beforeLeave = position == 0 ? 0 : Leave(state, _order[position - 1]);
        int there = position == 0 ? table.Roads.Reaching(nurse, here, start) : table.Roads.Leaving(before, here, beforeLeave);
        int on = table.Roads.Leaving(here, after, leave);
        if (_count == 1) return there + on;
        int straight = position == 0
            ? table.Roads.Reaching(nurse, after, state.Start[_order[1]])
            : table.Roads.Leaving(before, after, beforeLeave);
        return there + on - straight;
    }

    /// <summary>The break as a reader of the plan would place it: before leaving, in a gap, after coming home, or on the way home.</summary>
    private bool BreakFits(StandingState state, int line, int position, in Entering visit, ref int back)
    {
        if (table.Shifts[line] is not { LunchMinutes: > 0 } shift) return true;
        int first = position == 0 ? table.PlaceOf(visit.Patient) : PlaceOf(_order[0]);
        if (_starts[0] - table.Roads.Reaching(table.NurseOf(line), first, _starts[0]) >= shift.LunchFrom + shift.LunchMinutes) return true;
        int leave = 0, place = 0;
        for (int i = 0; i < _count; i++)
        {
            int here = i == position ? table.PlaceOf(visit.Patient) : PlaceOf(_order[i]);
            if (i > 0 && leave + table.Roads.Leaving(place, here, leave) + Extra(i - 1) + shift.LunchMinutes <= _starts[i]
                && leave <= shift.LunchTo && _starts[i] >= shift.LunchFrom + shift.LunchMinutes) return true;
            leave = _starts[i] + (i == position ? visit.Minutes : state.Minutes[_order[i]]) + _charting;
            place = here;
        }

        if (back <= shift.LunchTo) return true;
        if (leave > shift.LunchTo) return false;
        back += shift.LunchMinutes;
        return true;
    }

    /// <summary>Least separations from placed visits of the same chain.</summary>
    public static bool TiesHold(StandingState state, StandingVisit visit, int start)
    {
        foreach (ChainTie tie in visit.Ties)
        {
            if (state.Nurse[tie.Other] < 0) continue;
            int other = state.Start[tie.Other];
            int gap = tie.InDays ? (CompiledWeek.DayOf(start) - CompiledWeek.DayOf(other)) * 1440 : start - other;
            if ((tie.OtherBefore ? gap : -gap) < tie.Gap) return false;
        }

        return true;
    }

    private int Leave(StandingState state, int visit) => state.Start[visit] + state.Minutes[visit] + _charting;

    private int PlaceOf(int visit) => table.PlaceOf(FactsOf(visit).Patient);

    private StandingVisit FactsOf(int visit) => visit < table.Visits.Length ? table.Visits[visit] : newcomer!;
}

/// <summary>A visit about to enter a line: whose, for how many minutes with that nurse, and most minutes from its start to a drop point where she draws.</summary>
internal readonly record struct Entering(int Patient, int Minutes, int Draw = int.MaxValue);
