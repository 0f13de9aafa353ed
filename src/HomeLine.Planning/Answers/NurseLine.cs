using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Answers;

/// <summary>One nurse's day as published: its visits in order, kept at their starts unless something pushes them later.</summary>
internal sealed class NurseLine(UrgentCase urgent, Nurse nurse, int day, ImmutableArray<PlannedVisit> visits)
{
    private readonly ITravelTimes _travel = urgent.Problem.Travel;
    private readonly int _charting = urgent.Problem.Rules.DocumentationMinutes;

    public Nurse Nurse { get; } = nurse;

    public int Day { get; } = day;

    public Shift? Shift { get; } = nurse.Shifts.FirstOrDefault(s => s.Day == day);

    public ImmutableArray<PlannedVisit> Visits { get; } = visits;

    public static NurseLine Of(UrgentCase urgent, Nurse nurse, int day, IEnumerable<PlannedVisit> visits) => new(
        urgent,
        nurse,
        day,
        [
            .. visits.Where(v => (v.Nurse == nurse.Id || v.Second == nurse.Id) && Search.CompiledWeek.DayOf(v.Start) == day)
                .OrderBy(v => v.Start).ThenBy(v => v.Id, StringComparer.Ordinal),
        ]);

    /// <summary>Driving minutes of the day, first and last leg included.</summary>
    public int Driving => DrivingOf(Visits);

    public int DrivingOf(ImmutableArray<PlannedVisit> visits)
    {
        if (visits.IsEmpty) return 0;
        int minutes = _travel.Minutes(Nurse.Home, urgent.PlaceOf(visits[0])) + _travel.Minutes(urgent.PlaceOf(visits[^1]), Nurse.Home);
        for (int i = 1; i < visits.Length; i++) minutes += _travel.Minutes(urgent.PlaceOf(visits[i - 1]), urgent.PlaceOf(visits[i]));
        return minutes;
    }

    /// <summary>When the nurse reaches a place if she goes there after the visit before a position; never leaving before now.</summary>
    public int ArrivalAt(int position, int place)
    {
        int from = position == 0 ? Nurse.Home : urgent.PlaceOf(Visits[position - 1]);
        int leave = position == 0 ? Shift!.From : Leave(Visits[position - 1]);
        return Math.Max(leave, urgent.Problem.Now) + _travel.Minutes(from, place);
    }

    /// <summary>The line with a timed visit put in and the later ones pushed as little as the road asks; or why that cannot be.</summary>
    public Pushed PutIn(PlannedVisit visit, int position, int homeBy)
    {
        var line = Visits.Insert(position, visit).ToBuilder();
        for (int i = position + 1; i < line.Count; i++)
        {
            int arrival = Leave(line[i - 1]) + _travel.Minutes(urgent.PlaceOf(line[i - 1]), urgent.PlaceOf(line[i]));
            if (arrival <= line[i].Start) break;
            if (Immovable(line[i]) is { } reason) return Pushed.Not(reason);
            int start = urgent.StartAfter(urgent.PatientOf(line[i]), [.. urgent.CareOf(line[i])], arrival);
            if (start < 0) return Pushed.Not(NoLongerAllowed(line[i], arrival));
            line[i] = line[i] with { Start = start };
        }

        int home = Leave(line[^1]) + _travel.Minutes(urgent.PlaceOf(line[^1]), Nurse.Home);
        if (home > homeBy) return Pushed.Not(Overruns(home - homeBy, homeBy), home - homeBy);
        if (line.Count > Nurse.MaxVisitsADay)
        {
            return Pushed.Not(new PlanningReason(ReasonCode.TooManyVisits,
                $"{Nurse.Name} already has {Nurse.MaxVisitsADay} visits, the most she takes a day.", "Move one of her visits first."));
        }

        return new Pushed(line.ToImmutable(), null, 0);
    }

    private int Leave(PlannedVisit visit) => visit.Start + visit.Minutes + _charting;

    private PlanningReason? Immovable(PlannedVisit visit)
    {
        string who = urgent.PatientOf(visit).Name, at = PlanClock.Time(visit.Start);
        if (urgent.IsFixed(visit))
        {
            return new PlanningReason(ReasonCode.FixedInTheWay,
                $"{Nurse.Name} is about to be at {who} at {at}; that visit stays.", "Choose another nurse or a later time.");
        }

        return visit.Second is null
            ? null
            : new PlanningReason(ReasonCode.FixedInTheWay,
                $"The two-person visit to {who} at {at} would have to move for both nurses.", "Choose another nurse or a later time.");
    }

    private PlanningReason NoLongerAllowed(PlannedVisit visit, int arrival) => new(
        ReasonCode.OutsideStartTimes,
        $"{urgent.PatientOf(visit).Name} could be reached only at {PlanClock.Time(arrival)}, after the last start allowed there.",
        "Choose another nurse, or move that visit.");

    private PlanningReason Overruns(int minutes, int homeBy) => new(
        ReasonCode.OverrunsShift,
        $"{Nurse.Name} would overrun her {PlanClock.Time(homeBy)} by {minutes} minutes.",
        "Ask her for overtime, or choose another nurse.");
}

/// <summary>A nurse's day after something was put in, or why it could not be.</summary>
/// <param name="Visits">The visits with their new starts.</param>
/// <param name="Fault">Why not; empty when it works.</param>
/// <param name="Overrun">By how many minutes the day would be too long, when that is the fault.</param>
internal sealed record Pushed(ImmutableArray<PlannedVisit> Visits, PlanningReason? Fault, int Overrun)
{
    public static Pushed Not(PlanningReason fault, int overrun = 0) => new([], fault, overrun);
}
