using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Reserve;

/// <summary>The free slots of a day of a plan against those asked for.</summary>
/// <param name="Day">Day index.</param>
/// <param name="Asked">Slots to keep free; 0 on a day that is over or on which nobody works.</param>
/// <param name="Free">Slots free over all nurses at work.</param>
public sealed record DaySlots(int Day, int Asked, int Free)
{
    /// <summary>Slots fewer than asked for.</summary>
    public int Missing => Math.Max(0, Asked - Free);

    /// <summary>Every day of the horizon.</summary>
    /// <param name="problem">Nurses, hours and roads.</param>
    /// <param name="visits">The plan's visits.</param>
    /// <param name="rules">What is asked for.</param>
    public static ImmutableArray<DaySlots> Of(WeekProblem problem, ImmutableArray<PlannedVisit> visits, ReserveRules rules)
    {
        var slots = new FreeSlots(rules.SlotMinutes, problem.Rules.DocumentationMinutes);
        var places = problem.Patients.ToDictionary(p => p.Id, p => p.Place, StringComparer.Ordinal);
        ILookup<(string Nurse, int Day), BusyTime> busy = visits.OrderBy(v => v.Start)
            .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (Seat: (n, DayOf(v.Start)), Time: new BusyTime(places[v.Patient], v.Start, v.Minutes))))
            .ToLookup(s => s.Seat, s => s.Time);
        ILookup<int, (Nurse Nurse, Shift Shift)> atWork = problem.Nurses
            .SelectMany(n => n.Shifts.Where(s => !s.OnCall && s.To > problem.Now).Select(s => (Nurse: n, Shift: s))).ToLookup(w => w.Shift.Day);
        return [.. Enumerable.Range(0, problem.DayCount).Select(day => new DaySlots(
            day,
            rules.AskedOf(atWork[day].Count()),
            atWork[day].Sum(w => slots.Of(w.Shift, problem.Now, busy[(w.Nurse.Id, day)], problem.Travel, w.Nurse.Home))))];
    }

    private static int DayOf(int minute) => (int)Math.Floor(minute / 1440.0);
}
