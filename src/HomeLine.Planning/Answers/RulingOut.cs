using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>Remembers why each nurse failed and tells the most telling reason; sentences are made only for those who fail altogether.</summary>
internal sealed class RulingOut(UrgentCase urgent, PushTrial trial)
{
    /// <summary>An overrun up to this many minutes is told as such; beyond it the day is simply full. Our own default.</summary>
    private const int TellableOverrun = 60;

    private static readonly string[] Telling =
    [
        ReasonCode.SkillMissing, ReasonCode.LicenceMissing, ReasonCode.NurseRefused, ReasonCode.TraitMissing, ReasonCode.TraitExcluded,
        ReasonCode.OverrunsShift, ReasonCode.DayFull, ReasonCode.TooManyVisits, ReasonCode.TooManyOfKind, ReasonCode.MovesTold, ReasonCode.OutsideStartTimes,
        ReasonCode.SpecimenLate, ReasonCode.FixedInTheWay,
    ];

    private readonly StandingTable _table = urgent.Table;
    private readonly Dictionary<int, (int Rank, int Amount, Func<PlanningReason> Say)> _reasons = [];

    /// <summary>Notes what no place in the day can mend; true when there is such a thing.</summary>
    public bool AtOnce(int nurse, int day, bool onCallToo)
    {
        Nurse who = _table.Problem.Nurses[nurse];
        Shift? shift = _table.Shifts[_table.Line(nurse, day)];
        if (Scope.Fault(_table.Problem, urgent.Patient, urgent.Care, who, day) is { } fault) Note(nurse, fault.Code, 0, () => fault);
        else if (StandingCaps.Broken(_table, urgent.Staying, urgent.Care, nurse, day) is { } cap) Note(nurse, ReasonCode.TooManyOfKind, 0, () => RulingWords.TooManyOfKind(who, cap));
        else if (shift is { OnCall: false } || (shift is not null && onCallToo)) return false;
        else if (shift is null) Note(nurse, ReasonCode.NotWorking, 0, () => RulingWords.NotWorking(_table.Problem, who, day));
        else Note(nurse, ReasonCode.OnCall, 0, () => RulingWords.OnCall(_table.Problem, who, day));
        return true;
    }

    public void Note(int line, in Push push, bool deeper)
    {
        int nurse = _table.NurseOf(line), overrun = push.Fault == PushFault.Overruns ? push.Amount : 0;
        string code = Code(push.Fault, overrun);
        if (Tells(nurse, code, overrun)) Keep(line, push, code, overrun, deeper);
    }

    public void NoteMoves(int line, int position, in Push push, bool deeper)
    {
        if (Tells(_table.NurseOf(line), ReasonCode.MovesTold, push.MovedTold)) KeepMoves(line, position, push.Start, push.MovedTold, deeper);
    }

    private void Keep(int line, Push push, string code, int overrun, bool deeper) =>
        Note(_table.NurseOf(line), code, overrun, () => RulingWords.Of(_table, line, push, code, deeper, urgent.Patient));

    private void KeepMoves(int line, int position, int start, int told, bool deeper) =>
        Note(_table.NurseOf(line), ReasonCode.MovesTold, told, () => Moves(line, position, start, told, deeper));

    public void NoteTaken(int line) => Note(_table.NurseOf(line), ReasonCode.TwoVisitsADay, 0, () => new PlanningReason(
        ReasonCode.TwoVisitsADay,
        $"{urgent.Patient.Name} already has a visit on {PlanClock.DayName(_table.Problem.FirstDay, _table.DayOf(line))}.",
        "Let the urgent visit replace it, so that both are one."));

    public void NoteSecond(int line) => Note(_table.NurseOf(line), ReasonCode.SecondMissing, 0, () => new PlanningReason(
        ReasonCode.SecondMissing,
        $"No second person is free when {_table.Problem.Nurses[_table.NurseOf(line)].Name} could be at {urgent.Patient.Name}.",
        "Ask somebody to come along."));

    public void Note(int line, PlanningReason reason) => Note(_table.NurseOf(line), reason.Code, 0, () => reason);

    /// <summary>Everybody who is not able, in the order of the nurses.</summary>
    public ImmutableArray<RuledOut> Except(HashSet<int> able) =>
    [
        .. from nurse in Enumerable.Range(0, _table.Problem.Nurses.Length)
           where !able.Contains(nurse) && _reasons.ContainsKey(nurse)
           select new RuledOut(_table.Problem.Nurses[nurse].Id, _reasons[nurse].Say()),
    ];

    private PlanningReason Moves(int line, int position, int start, int told, bool deeper)
    {
        var after = new StandingState(urgent.Staying);
        Shift shift = _table.Shifts[line]!;
        var entering = new Entering(urgent.PatientIndex, _table.MinutesOf(urgent.Visit, _table.NurseOf(line)), urgent.Visit.DrawToDrop);
        trial.Try(after, line, position, entering, start, deeper ? shift.OvertimeTo : shift.To);
        trial.Apply(after, line, position, after.Newcomer, entering);
        int most = -1;
        foreach (int visit in urgent.Staying.On(line))
        {
            StandingVisit facts = _table.Visits[visit];
            if (!facts.Told || !DisruptionPrice.Felt(facts, after.Nurse[visit], after.Second[visit], after.Start[visit])) continue;
            if (most < 0 || Math.Abs(after.Start[visit] - facts.Was.Start) > Math.Abs(after.Start[most] - _table.Visits[most].Was.Start)) most = visit;
        }

        string others = told == 1 ? string.Empty : $", and {told - 1} more";
        return new PlanningReason(ReasonCode.MovesTold,
            $"{_table.Problem.Nurses[_table.NurseOf(line)].Name} would have to move {_table.Visits[most].Home.Name} by {after.Start[most] - _table.Visits[most].Was.Start} minutes{others}.",
            "Phone these families first, or choose another nurse.");
    }

    /// <summary>Keeps the most telling reason of a nurse, and of two alike the one with the smaller amount.</summary>
    private void Note(int nurse, string code, int amount, Func<PlanningReason> say)
    {
        if (Tells(nurse, code, amount)) _reasons[nurse] = (Rank(code), amount, say);
    }

    private bool Tells(int nurse, string code, int amount) =>
        !_reasons.TryGetValue(nurse, out var known) || (known.Rank, known.Amount).CompareTo((Rank(code), amount)) > 0;

    private static string Code(PushFault fault, int overrun) => fault switch
    {
        PushFault.NoTimeLeft => ReasonCode.NoTimeLeft,
        PushFault.InTheWay => ReasonCode.FixedInTheWay,
        PushFault.LaterTooLate => ReasonCode.OutsideStartTimes,
        PushFault.Overruns => overrun > TellableOverrun ? ReasonCode.DayFull : ReasonCode.OverrunsShift,
        PushFault.TooMany => ReasonCode.TooManyVisits,
        PushFault.NoDrop => ReasonCode.SpecimenLate,
        _ => ReasonCode.BreakMissing,
    };

    private static int Rank(string code)
    {
        int rank = Array.IndexOf(Telling, code);
        return rank < 0 ? Telling.Length : rank;
    }
}
