using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Mending;

/// <summary>Finds the place for a visit under repair that makes least late, then disturbs least, then drives least.</summary>
internal sealed class MendPlaces(StandingTable table, PushTrial trial, IReadOnlySet<int> closed, MendOptions options)
{
    private const int PairsKept = 24;

    private readonly DisruptionPoints _points = table.Problem.Rules.Disruption;
    private readonly bool[] _touched = new bool[table.Problem.Nurses.Length];
    private readonly DrawLimit?[] _draws = new DrawLimit?[table.Visits.Length];

    /// <summary>The best place and its cost; the worst cost when there is none.</summary>
    public (MendPlace Place, MendCost Cost) Best(MendState state, int visit)
    {
        StandingVisit facts = table.Visits[visit];
        NoteTouched(state.Standing, visit);
        (MendPlace Place, MendCost Cost) best = (default, MendCost.Worst);
        int today = CompiledWeek.DayOf(table.Problem.Now);
        for (int day = Math.Max(0, today); day < table.Problem.DayCount; day++)
        {
            if (facts.StartAfter(Math.Max(day * 1440, table.Problem.Now)) < 0 || TakenThatDay(state.Standing, visit, day)) continue;
            if (facts.Home.CrewSize > 1) Pairs(state.Standing, visit, day, ref best);
            else Alone(state.Standing, visit, day, ref best);
        }

        if (options.Merges && facts.Home.CrewSize == 1) Join(state.Standing, visit, ref best);
        return best;
    }

    /// <summary>Into another visit of the patient, which keeps its start and takes longer.</summary>
    private void Join(StandingState state, int visit, ref (MendPlace Place, MendCost Cost) best)
    {
        StandingVisit facts = table.Visits[visit];
        foreach (int into in table.OfPatient[facts.Patient])
        {
            if (!Merging.Allows(table, state, visit, into)) continue;
            int nurse = state.Nurse[into], start = state.Start[into], day = CompiledWeek.DayOf(start), line = table.Line(nurse, day), position = state.On(line).IndexOf(into);
            if (closed.Contains(line) || table.Shifts[line] is not { } shift || StandingCaps.Broken(table, state, facts.Care, nurse, day) is not null) continue;
            state.MergedInto[visit] = into;
            int minutes = Merging.Minutes(table, state, into, nurse), was = state.Minutes[into];
            state.TakeOut(into);
            Push push = DrawOf(into).Holds(start, minutes) && DrawOf(visit).Holds(start, minutes)
                ? trial.Try(state, line, position, new Entering(facts.Patient, minutes, Math.Min(facts.DrawToDrop, table.Visits[into].DrawToDrop)), start, shift.OvertimeTo)
                : Push.Not(PushFault.NoTimeLeft);
            state.Insert(into, line, position);
            (state.Nurse[into], state.Minutes[into], state.MergedInto[visit]) = (nurse, was, -1);
            if (push.Fault != PushFault.None) continue;
            int disruption = push.Disruption + DisruptionPrice.Replaced(_points, facts.Was) + (facts.Told ? _points.PhoneCall : 0) + (_touched[nurse] ? 0 : _points.ExtraNurse);
            var cost = new MendCost(push.Late + trial.LateAt(facts, start), disruption, table.Problem.Rules.OvertimeFactor * push.Overtime);
            if (cost < best.Cost) best = (new MendPlace(line, position, start, Into: into), cost);
        }
    }

    private void Alone(StandingState state, int visit, int day, ref (MendPlace, MendCost) best)
    {
        for (int nurse = 0; nurse < table.Problem.Nurses.Length; nurse++)
        {
            int line = table.Line(nurse, day);
            if (!Takes(state, line) || !Able(state, visit, nurse, day)) continue;
            for (int position = 0; position <= state.On(line).Length; position++) AtPosition(state, visit, line, position, ref best);
        }
    }

    private bool Able(StandingState state, int visit, int nurse, int day) =>
        table.Able(visit, nurse, day) && StandingCaps.Broken(table, state, table.Visits[visit].Care, nurse, day) is null;

    private bool Takes(StandingState state, int line) =>
        table.Shifts[line] is { } shift && (options.OnCall || !shift.OnCall) && !closed.Contains(line) && state.HasRoom(line);

    /// <summary>As promised where the road allows, else as early as it does.</summary>
    private void AtPosition(StandingState state, int visit, int line, int position, ref (MendPlace, MendCost) best)
    {
        StandingVisit facts = table.Visits[visit];
        int ways = trial.WaysTo(state, line, position);
        for (int way = 0; way < ways; way++)
        {
            int arrival = trial.ArrivalAt(state, line, position, facts.Patient, byDrop: way > 0);
            int promised = CompiledWeek.DayOf(arrival) == CompiledWeek.DayOf(facts.Was.Start) ? Math.Max(arrival, facts.Was.Start) : arrival;
            Consider(state, visit, line, position, facts.StartAfter(promised), ref best);
            if (promised != arrival) Consider(state, visit, line, position, facts.StartAfter(arrival), ref best);
        }
    }

    private void Consider(StandingState state, int visit, int line, int position, int start, ref (MendPlace, MendCost Cost) best)
    {
        StandingVisit facts = table.Visits[visit];
        int nurse = table.NurseOf(line), minutes = table.MinutesOf(facts, nurse);
        if (start < 0 || !PushTrial.TiesHold(state, facts, start) || !DrawOf(visit).Holds(start, minutes)) return;
        if (CannotWin(state, facts, line, nurse, start, best.Cost)) return;
        Push push = trial.Try(state, line, position, new Entering(facts.Patient, minutes, facts.DrawToDrop), start, table.Shifts[line]!.OvertimeTo);
        if (push.Fault != PushFault.None) return;
        MendCost cost = CostOf(facts, push, start, nurse, -1);
        if (table.Shifts[line]!.OnCall && state.On(line).Length == 0) cost = cost with { Disruption = cost.Disruption + _points.OnCall };
        if (cost < best.Cost) best = (new MendPlace(line, position, start), cost);
    }

    /// <summary>
    /// Whether a start is dearer than the best place before anybody is pushed: being pushed makes nobody less late, and takes back no more disruption than the
    /// visits of the line carry already.
    /// </summary>
    private bool CannotWin(StandingState state, StandingVisit facts, int line, int nurse, int start, in MendCost best)
    {
        long late = trial.LateAt(facts, start);
        if (late != best.Late) return late > best.Late;
        int own = DisruptionPrice.Of(_points, facts, nurse, -1, start);
        if (own > 0 && !_touched[nurse]) own += _points.ExtraNurse;
        if (own <= best.Disruption) return false;
        foreach (int other in state.On(line)) own -= DisruptionPrice.Of(_points, table.Visits[other], state.Nurse[other], state.Second[other], state.Start[other]);
        return own > best.Disruption;
    }

    private MendCost CostOf(StandingVisit facts, in Push push, int start, int nurse, int second)
    {
        long disruption = push.Disruption + DisruptionPrice.Of(_points, facts, nurse, second, start);
        if (DisruptionPrice.Felt(facts, nurse, second, start) || push.Disruption > 0)
        {
            if (!_touched[nurse]) disruption += _points.ExtraNurse;
            if (second >= 0 && !_touched[second]) disruption += _points.ExtraNurse;
        }

        return new MendCost(push.Late + trial.LateAt(facts, start), disruption, push.Driving + (table.Problem.Rules.OvertimeFactor * push.Overtime));
    }

    private void Pairs(StandingState state, int visit, int day, ref (MendPlace, MendCost) best)
    {
        StandingVisit facts = table.Visits[visit];
        var lines = Enumerable.Range(0, table.Problem.Nurses.Length).Select(n => table.Line(n, day)).Where(l => Takes(state, l)).ToArray();
        (int, int)[] first = Nearest(state, facts, lines.Where(l => Able(state, visit, table.NurseOf(l), day)));
        (int, int)[] second = Nearest(state, facts, lines.Where(l => Scope.HomeFault(facts.Home, table.Problem.Nurses[table.NurseOf(l)]) is null));
        foreach ((int line, int position) in first)
        {
            foreach ((int other, int positionB) in second)
            {
                if (other != line) Pair(state, visit, line, position, other, positionB, ref best);
            }
        }
    }

    private (int, int)[] Nearest(StandingState state, StandingVisit facts, IEnumerable<int> lines) =>
    [
        .. lines.SelectMany(l => Enumerable.Range(0, state.On(l).Length + 1).Select(p => (Line: l, Position: p)))
            .OrderBy(p => trial.Detour(state, p.Line, p.Position, facts.Patient)).ThenBy(p => p.Line).ThenBy(p => p.Position).Take(PairsKept),
    ];

    private void Pair(StandingState state, int visit, int line, int position, int other, int positionB, ref (MendPlace, MendCost Cost) best)
    {
        StandingVisit facts = table.Visits[visit];
        int nurse = table.NurseOf(line), minutes = table.MinutesOf(facts, nurse);
        int arrival = Math.Max(trial.ArrivalAt(state, line, position, facts.Patient), trial.ArrivalAt(state, other, positionB, facts.Patient));
        bool sameDay = CompiledWeek.DayOf(arrival) == CompiledWeek.DayOf(facts.Was.Start);
        int start = facts.StartAfter(sameDay ? Math.Max(arrival, facts.Was.Start) : arrival);
        if (start < 0 || !DrawOf(visit).Holds(start, minutes) || !PushTrial.TiesHold(state, facts, start)) return;
        var entering = new Entering(facts.Patient, minutes);
        Push here = trial.Try(state, line, position, entering with { Draw = facts.DrawToDrop }, start, table.Shifts[line]!.OvertimeTo);
        if (here.Fault != PushFault.None) return;
        Push there = trial.Try(state, other, positionB, entering, start, table.Shifts[other]!.OvertimeTo);
        if (there.Fault != PushFault.None) return;
        MendCost own = CostOf(facts, here, start, nurse, table.NurseOf(other));
        var cost = new MendCost(own.Late + there.Late, own.Disruption + there.Disruption, own.Work + there.Driving);
        if (cost < best.Cost) best = (new MendPlace(line, position, start, other, positionB), cost);
    }

    private DrawLimit DrawOf(int visit) => _draws[visit] ??= new DrawLimit(table.Problem, table.Visits[visit]);

    private void NoteTouched(StandingState state, int placing)
    {
        Array.Clear(_touched);
        _touched[table.Visits[placing].WasNurse] = true;
        for (int v = 0; v < table.Visits.Length; v++)
        {
            StandingVisit visit = table.Visits[v];
            if (state.Nurse[v] < 0) _touched[visit.WasNurse] = true;
            else if (DisruptionPrice.Felt(visit, state.Nurse[v], state.Second[v], state.Start[v])) _touched[visit.WasNurse] = _touched[state.Nurse[v]] = true;
        }
    }

    private bool TakenThatDay(StandingState state, int visit, int day)
    {
        if (table.Visits[visit].SafetyOnly) return false;
        foreach (int mate in table.OfPatient[table.Visits[visit].Patient])
        {
            if (mate != visit && state.Nurse[mate] >= 0 && !table.Visits[mate].SafetyOnly && CompiledWeek.DayOf(state.Start[mate]) == day) return true;
        }

        return false;
    }
}
