using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>
/// Looks at every position of every able nurse's day by pushing later visits only; deeper, also at pairs of people with overtime, and at letting one other
/// visit make room. Notes why nurses fail.
/// </summary>
internal sealed class UrgentScan
{
    private const int PairsKept = 30, FewNurses = 10;

    private readonly UrgentCase _urgent;
    private readonly StandingTable _table;
    private readonly PushTrial _trial;
    private readonly RulingOut _ruledOut;
    private readonly StandingPrice _price;
    private MakingRoom? _room;

    public UrgentScan(UrgentCase urgent, PushTrial trial, StandingPrice price, RulingOut ruledOut)
    {
        (_urgent, _table, _trial, _price, _ruledOut) = (urgent, urgent.Table, trial, price, ruledOut);
    }

    /// <summary>Candidates found so far.</summary>
    public List<Candidate> Found { get; } = [];

    /// <summary>One day, all nurses.</summary>
    /// <param name="day">The day.</param>
    /// <param name="moves">Most told families moved.</param>
    /// <param name="deeper">Overtime, on-call nurses and making room allowed.</param>
    public void OnDay(int day, int moves, bool deeper)
    {
        bool taken = _urgent.HasVisitOn(day);
        for (int nurse = 0; nurse < _table.Problem.Nurses.Length; nurse++)
        {
            if (_ruledOut.AtOnce(nurse, day, deeper)) continue;
            if (taken) _ruledOut.NoteTaken(_table.Line(nurse, day));
            else if (_urgent.Patient.CrewSize == 1) Alone(_table.Line(nurse, day), moves, deeper);
        }

        if (taken) return;
        if (_urgent.Patient.CrewSize > 1) Pairs(day, moves, deeper);
        else if (deeper) Found.AddRange((_room ??= new MakingRoom(_urgent, _trial, _price)).OnDay(day, moves));
    }

    private int HomeBy(int line, bool deeper) => deeper ? _table.Shifts[line]!.OvertimeTo : _table.Shifts[line]!.To;

    private void Alone(int line, int moves, bool deeper)
    {
        int minutes = _table.MinutesOf(_urgent.Visit, _table.NurseOf(line)), count = _urgent.Staying.On(line).Length;
        var entering = new Entering(_urgent.PatientIndex, minutes, _urgent.Visit.DrawToDrop);
        for (int position = 0; position <= count; position++)
        {
            int ways = _trial.WaysTo(_urgent.Staying, line, position);
            for (int way = 0; way < ways; way++)
            {
                int start = _urgent.StartAfter(_trial.ArrivalAt(_urgent.Staying, line, position, _urgent.PatientIndex, byDrop: way > 0), minutes);
                At(line, position, entering, start, moves, deeper);
            }
        }
    }

    private void At(int line, int position, in Entering entering, int start, int moves, bool deeper)
    {
        if (start < 0)
        {
            _ruledOut.Note(line, Push.Not(PushFault.NoTimeLeft), deeper);
            return;
        }

        Push push = _trial.Try(_urgent.Staying, line, position, entering, start, HomeBy(line, deeper));
        if (push.Fault != PushFault.None) _ruledOut.Note(line, push, deeper);
        else if (push.MovedTold > moves) _ruledOut.NoteMoves(line, position, push, deeper);
        else Found.Add(new Candidate(line, position, start, push.MovedTold, _price.Disruption(push.Disruption, _table.NurseOf(line)), _price.Driving(line, push.Driving), deeper));
    }

    /// <summary>Two people at the same start, each in the gap of her own day; in large plans the shortest detours are paired.</summary>
    private void Pairs(int day, int moves, bool deeper)
    {
        int before = Found.Count;
        int[] working = [.. Enumerable.Range(0, _table.Problem.Nurses.Length).Select(n => _table.Line(n, day)).Where(l => Works(l, deeper))];
        int[] able = [.. working.Where(l => !_ruledOut.AtOnce(_table.NurseOf(l), day, deeper))];
        int[] second = [.. working.Where(l => Scope.HomeFault(_urgent.Patient, _table.Problem.Nurses[_table.NurseOf(l)]) is null)];
        (int Line, int Position)[] others = Shortest(second);
        foreach ((int line, int position) in Shortest(able))
        {
            foreach ((int other, int positionB) in others)
            {
                if (other != line) Pair(line, other, position, positionB, moves, deeper);
            }
        }

        if (Found.Count > before) return;
        foreach (int line in able) _ruledOut.NoteSecond(line);
    }

    private bool Works(int line, bool deeper) => _table.Shifts[line] is { } shift && (!shift.OnCall || deeper);

    private (int Line, int Position)[] Shortest(int[] lines)
    {
        var places = lines.SelectMany(l => Enumerable.Range(0, _urgent.Staying.On(l).Length + 1).Select(p => (Line: l, Position: p)));
        if (lines.Length <= FewNurses) return [.. places];
        return [.. places.OrderBy(p => _trial.Detour(_urgent.Staying, p.Line, p.Position, _urgent.PatientIndex)).ThenBy(p => p.Line).ThenBy(p => p.Position).Take(PairsKept)];
    }

    private void Pair(int line, int other, int position, int positionB, int moves, bool deeper)
    {
        int nurse = _table.NurseOf(line), second = _table.NurseOf(other), minutes = _table.MinutesOf(_urgent.Visit, nurse);
        int arrival = Math.Max(
            _trial.ArrivalAt(_urgent.Staying, line, position, _urgent.PatientIndex),
            _trial.ArrivalAt(_urgent.Staying, other, positionB, _urgent.PatientIndex));
        int start = _urgent.StartAfter(arrival, minutes);
        if (start < 0) return;
        var entering = new Entering(_urgent.PatientIndex, minutes);
        Push here = _trial.Try(_urgent.Staying, line, position, entering with { Draw = _urgent.Visit.DrawToDrop }, start, HomeBy(line, deeper));
        if (here.Fault != PushFault.None) return;
        Push there = _trial.Try(_urgent.Staying, other, positionB, entering, start, HomeBy(other, deeper));
        if (there.Fault != PushFault.None || here.MovedTold + there.MovedTold > moves) return;
        Found.Add(new Candidate(
            line,
            position,
            start,
            here.MovedTold + there.MovedTold,
            _price.Disruption(here.Disruption + there.Disruption, nurse, second),
            _price.Driving(line, here.Driving + there.Driving),
            deeper,
            other,
            positionB));
    }
}
