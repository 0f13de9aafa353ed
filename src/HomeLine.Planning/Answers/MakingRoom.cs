using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>
/// Takes one other visit out of a nurse's day, puts the urgent one in, and finds the other the place with least disruption, on time, with any nurse and day.
/// In large plans only the most promising exchanges are followed.
/// </summary>
internal sealed class MakingRoom(UrgentCase urgent, PushTrial trial, StandingPrice price)
{
    /// <summary>So many exchanges of a day are followed; all of them in small plans come to fewer.</summary>
    private const int Followed = 60, FollowedInLarge = 5, Large = 20;

    private readonly StandingTable _table = urgent.Table;
    private readonly StandingState _without = new(urgent.Staying);

    public IEnumerable<Candidate> OnDay(int day, int moves)
    {
        _without.CopyFrom(urgent.Staying);
        var exchanges = new List<(Candidate Candidate, int OfOthers)>();
        for (int nurse = 0; nurse < _table.Problem.Nurses.Length; nurse++)
        {
            int line = _table.Line(nurse, day);
            if (_table.Shifts[line] is null || Scope.Fault(_table.Problem, urgent.Patient, urgent.Care, _table.Problem.Nurses[nurse], day) is not null) continue;
            foreach (int other in urgent.Staying.On(line).ToArray())
            {
                if (!_table.Visits[other].Fixed && urgent.Staying.Second[other] < 0 && _table.Visits[other].Care.Length > 0) Exchange(line, other, exchanges);
            }
        }

        int followed = _table.Problem.Nurses.Length > Large ? FollowedInLarge : Followed;
        return
        [
            .. exchanges.OrderBy(e => e.Candidate.Start <= urgent.Target ? 0 : 1).ThenBy(e => e.Candidate.Disruption).ThenBy(e => e.Candidate.Driving)
                .ThenBy(e => e.Candidate.Start).Take(followed)
                .Select(e => Follow(e.Candidate, e.OfOthers, moves)).OfType<Candidate>(),
        ];
    }

    private void Exchange(int line, int other, List<(Candidate, int)> exchanges)
    {
        int stood = urgent.Staying.On(line).IndexOf(other), driving = trial.Driving(urgent.Staying, line);
        _without.TakeOut(other);
        int saved = driving - trial.Driving(_without, line), nurse = _table.NurseOf(line), minutes = _table.MinutesOf(urgent.Visit, nurse);
        for (int position = 0; position <= _without.On(line).Length; position++)
        {
            int ways = trial.WaysTo(_without, line, position);
            for (int way = 0; way < ways; way++)
            {
                int start = urgent.StartAfter(trial.ArrivalAt(_without, line, position, urgent.PatientIndex, byDrop: way > 0), minutes);
                if (start < 0 || start >= urgent.LateFrom) continue;
                Push push = trial.Try(_without, line, position, new Entering(urgent.PatientIndex, minutes, urgent.Visit.DrawToDrop), start, _table.Shifts[line]!.OvertimeTo);
                if (push.Fault != PushFault.None) continue;
                exchanges.Add((new Candidate(
                    line, position, start, push.MovedTold, price.Disruption(push.Disruption, nurse), price.Driving(line, push.Driving - saved), true, Other: other),
                    push.Disruption));
            }
        }

        _without.Insert(other, line, stood);
        _without.Nurse[other] = urgent.Staying.Nurse[other];
    }

    private Candidate? Follow(Candidate into, int ofOthers, int moves)
    {
        int nurse = _table.NurseOf(into.Line), index = _without.Newcomer;
        var entering = new Entering(urgent.PatientIndex, _table.MinutesOf(urgent.Visit, nurse), urgent.Visit.DrawToDrop);
        _without.CopyFrom(urgent.Staying);
        _without.TakeOut(into.Other);
        trial.Try(_without, into.Line, into.Position, entering, into.Start, _table.Shifts[into.Line]!.OvertimeTo);
        trial.Apply(_without, into.Line, into.Position, index, entering);
        _without.Nurse[index] = nurse;
        return Elsewhere(into, ofOthers, moves);
    }

    private Candidate? Elsewhere(Candidate into, int ofOthers, int moves)
    {
        StandingVisit other = _table.Visits[into.Other];
        Candidate? best = null;
        for (int day = CompiledWeek.DayOf(_table.Problem.Now); day < _table.Problem.DayCount; day++)
        {
            if (day * 1440 >= other.LateFrom || other.StartAfter(Math.Max(day * 1440, _table.Problem.Now)) < 0 || TakenThatDay(into.Other, day)) continue;
            for (int nurse = 0; nurse < _table.Problem.Nurses.Length; nurse++)
            {
                int line = _table.Line(nurse, day);
                if (_table.Shifts[line] is not { OnCall: false } || !_table.Able(into.Other, nurse, day)
                    || StandingCaps.Broken(_table, _without, other.Care, nurse, day) is not null) continue;
                best = InLine(into, other, ofOthers, moves, line, best);
            }
        }

        return best;
    }

    private Candidate? InLine(Candidate into, StandingVisit other, int ofOthers, int moves, int line, Candidate? best)
    {
        int nurse = _table.NurseOf(line), minutes = _table.MinutesOf(other, nurse), ownNurse = _table.NurseOf(into.Line);
        bool sameDay = _table.DayOf(line) == _table.DayOf(into.Line);
        var entering = new Entering(other.Patient, minutes, other.DrawToDrop);
        for (int place = 0; place < 2 * (_without.On(line).Length + 1); place++)
        {
            int position = place / 2;
            bool byDrop = place % 2 > 0;
            if (byDrop && trial.WaysTo(_without, line, position) < 2) continue;
            int start = other.StartAfter(trial.ArrivalAt(_without, line, position, other.Patient, byDrop: byDrop));
            if (start < 0 || start >= other.LateFrom || !PushTrial.TiesHold(_without, other, start)) continue;
            Push push = trial.Try(_without, line, position, entering, start, _table.Shifts[line]!.To);
            if (push.Fault != PushFault.None) continue;
            int felt = other.Told && DisruptionPrice.Felt(other, nurse, -1, start) ? 1 : 0;
            int moved = felt + push.MovedTold + (line == into.Line ? 0 : into.Moved);
            int disruption = price.Disruption(
                ofOthers + push.Disruption + DisruptionPrice.Of(_table.Problem.Rules.Disruption, other, nurse, -1, start),
                ownNurse, felt > 0 || push.Disruption > 0 ? nurse : ownNurse, other.WasNurse);
            int driving = into.Driving + (sameDay ? push.Driving : 0);
            if (moved > moves || (best is not null && (best.Disruption, best.Driving).CompareTo((disruption, driving)) <= 0)) continue;
            best = into with { Moved = moved, Disruption = disruption, Driving = driving, Elsewhere = new OtherPlace(line, position, start) };
        }

        return best;
    }

    private bool TakenThatDay(int visit, int day)
    {
        foreach (int mate in _table.OfPatient[_table.Visits[visit].Patient])
        {
            if (mate != visit && _without.Nurse[mate] >= 0 && CompiledWeek.DayOf(_without.Start[mate]) == day
                && !_table.Visits[mate].SafetyOnly && !_table.Visits[visit].SafetyOnly) return true;
        }

        return false;
    }
}
