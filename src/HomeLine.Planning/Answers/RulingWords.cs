using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Standing;

namespace HomeLine.Planning.Answers;

/// <summary>Why a nurse cannot take an urgent visit, in one sentence.</summary>
internal static class RulingWords
{
    public static PlanningReason NotWorking(WeekProblem problem, Nurse nurse, int day) => new(
        ReasonCode.NotWorking,
        $"{nurse.Name} does not work on {PlanClock.DayName(problem.FirstDay, day)}.",
        "Choose a nurse who works that day.");

    public static PlanningReason OnCall(WeekProblem problem, Nurse nurse, int day) => new(
        ReasonCode.OnCall,
        $"{nurse.Name} is on call on {PlanClock.DayName(problem.FirstDay, day)}; kept for when nothing else works.",
        "Call her in.");

    public static PlanningReason Of(StandingTable table, int line, in Push push, string code, bool deeper, PatientHome patient)
    {
        Nurse nurse = table.Problem.Nurses[table.NurseOf(line)];
        Shift shift = table.Shifts[line]!;
        int homeBy = deeper ? shift.OvertimeTo : shift.To;
        return code switch
        {
            ReasonCode.NoTimeLeft => new PlanningReason(code,
                $"{nurse.Name} would reach {patient.Name} after the last start allowed there.", "Agree a later start."),
            ReasonCode.OverrunsShift => new PlanningReason(code,
                $"{nurse.Name} would overrun her {PlanClock.Time(homeBy)} by {push.Amount} minutes.", "Ask her for overtime, or choose another nurse."),
            ReasonCode.DayFull => new PlanningReason(code,
                $"{nurse.Name}'s day is full: she would be home {push.Amount} minutes too late.", "Move one of her visits first."),
            ReasonCode.TooManyVisits => new PlanningReason(code,
                $"{nurse.Name} already has {nurse.MaxVisitsADay} visits, the most she takes a day.", "Move one of her visits first."),
            ReasonCode.BreakMissing => new PlanningReason(code, $"{nurse.Name} would have no room for her break.", "Choose another nurse or a later time."),
            ReasonCode.SpecimenLate => new PlanningReason(code,
                $"{nurse.Name} would bring a specimen to no drop point in time.", "Choose another nurse, or somebody else who takes the specimen."),
            ReasonCode.OutsideStartTimes => new PlanningReason(code,
                $"{Who(table, push)} could be reached only at {PlanClock.Time(push.Amount)}, after the last start allowed there.",
                "Choose another nurse, or move that visit."),
            _ => InTheWay(table, nurse, push),
        };
    }

    public static PlanningReason TooManyOfKind(Nurse nurse, VisitCap cap) => new(
        ReasonCode.TooManyOfKind,
        $"{nurse.Name} already has {cap.Most} {(cap.Most == 1 ? "visit" : "visits")} of the kind {cap.Kind}, the most she takes {(cap.AWeek ? "a week" : "a day")}.",
        "Choose another nurse, or move one of them first.");

    private static PlanningReason InTheWay(StandingTable table, Nurse nurse, in Push push)
    {
        StandingVisit visit = table.Visits[push.Culprit];
        string at = PlanClock.Time(visit.Was.Start);
        return new PlanningReason(
            ReasonCode.FixedInTheWay,
            visit.Fixed
                ? $"{nurse.Name} is about to be at {visit.Home.Name} at {at}; that visit stays."
                : $"The two-person visit to {visit.Home.Name} at {at} would have to move for both nurses.",
            "Choose another nurse or a later time.");
    }

    private static string Who(StandingTable table, in Push push) => table.Visits[push.Culprit].Home.Name;
}
