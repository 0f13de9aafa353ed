using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Search;

namespace HomeLine.Planning.Answers;

/// <summary>Remembers why each nurse failed and tells the most telling reason.</summary>
internal sealed class RulingOut(UrgentCase urgent)
{
    /// <summary>An overrun up to this many minutes is told as such; beyond it the day is simply full. Our own default.</summary>
    private const int TellableOverrun = 60;

    private static readonly string[] Telling =
    [
        ReasonCode.SkillMissing, ReasonCode.LicenceMissing, ReasonCode.NurseRefused, ReasonCode.TraitMissing, ReasonCode.TraitExcluded,
        ReasonCode.OverrunsShift, ReasonCode.DayFull, ReasonCode.TooManyVisits, ReasonCode.MovesTold, ReasonCode.OutsideStartTimes,
        ReasonCode.FixedInTheWay,
    ];

    private readonly Dictionary<string, (PlanningReason Reason, int Amount)> _reasons = new(StringComparer.Ordinal);

    /// <summary>Notes what no place in the day can mend; true when there is such a thing.</summary>
    public bool AtOnce(NurseLine line, bool onCallToo)
    {
        if (Scope.Fault(urgent.Problem, urgent.Patient, urgent.Care, line.Nurse, line.Day) is { } fault)
        {
            Note(line, fault);
            return true;
        }

        if (line.Shift is { OnCall: false } || (line.Shift is not null && onCallToo)) return false;
        string day = PlanClock.DayName(urgent.Problem.FirstDay, line.Day);
        Note(line, line.Shift is null
            ? new PlanningReason(ReasonCode.NotWorking, $"{line.Nurse.Name} does not work on {day}.", "Choose a nurse who works that day.")
            : new PlanningReason(ReasonCode.OnCall, $"{line.Nurse.Name} is on call on {day}; kept for when nothing else works.", "Call her in."));
        return true;
    }

    public void Note(NurseLine line, Pushed pushed)
    {
        bool full = pushed.Overrun > TellableOverrun;
        Note(line, full
            ? new PlanningReason(ReasonCode.DayFull,
                $"{line.Nurse.Name}'s day is full: she would be home {pushed.Overrun} minutes too late.", "Move one of her visits first.")
            : pushed.Fault!, pushed.Overrun);
    }

    public void Note(NurseLine line, ImmutableArray<MovedVisit> moved)
    {
        MovedVisit most = moved.MaxBy(m => Math.Abs(m.Minutes))!;
        string others = moved.Length == 1 ? string.Empty : $", and {moved.Length - 1} more";
        Note(line, new PlanningReason(ReasonCode.MovesTold,
            $"{line.Nurse.Name} would have to move {urgent.PatientOf(most.Before).Name} by {most.Minutes} minutes{others}.",
            "Phone these families first, or choose another nurse."), moved.Length);
    }

    /// <summary>Keeps the most telling reason of a nurse, and of two alike the one with the smaller amount.</summary>
    public void Note(NurseLine line, PlanningReason reason, int amount = 0)
    {
        if (_reasons.TryGetValue(line.Nurse.Id, out var known)
            && (Rank(known.Reason), known.Amount).CompareTo((Rank(reason), amount)) <= 0) return;
        _reasons[line.Nurse.Id] = (reason, amount);
    }

    /// <summary>Everybody who is not able, in the order of the nurses.</summary>
    public ImmutableArray<RuledOut> Except(HashSet<string?> able) =>
    [
        .. from nurse in urgent.Problem.Nurses
           where !able.Contains(nurse.Id) && _reasons.ContainsKey(nurse.Id)
           select new RuledOut(nurse.Id, _reasons[nurse.Id].Reason),
    ];

    private static int Rank(PlanningReason reason)
    {
        int rank = Array.IndexOf(Telling, reason.Code);
        return rank < 0 ? Telling.Length : rank;
    }
}
