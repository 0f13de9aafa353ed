using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using HomeLine.Planning.Reserve;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The free slots of a day for care nobody planned, against the reserve of policy.</summary>
/// <param name="Day">The day.</param>
/// <param name="Asked">Slots to keep free: one for so many nurses begun; 0 when nobody works, or when policy asks for none.</param>
/// <param name="Free">Slots free.</param>
/// <param name="Nurses">Names of the nurses who have a free slot.</param>
public sealed record DayReserve(LocalDate Day, int Asked, int Free, ImmutableArray<string> Nurses)
{
    public bool IsKept => Free >= Asked;

    /// <summary>Policy values <c>reserve.nursesperslot</c>, 0 for no reserve, and <c>reserve.slot</c>.</summary>
    public static ReserveRules Rules(PolicyBook policy, LocalDate on) =>
        new((int)policy.ValueOf("reserve.nursesperslot", on), Math.Max(1, (int)policy.ValueOf("reserve.slot", on)));

    /// <summary>Free slots of a week. What lies behind now is no longer free and no longer asked for. Counted as the planner counts them.</summary>
    /// <param name="roster">The nurses.</param>
    /// <param name="policy">Policy values of <see cref="Rules"/> and <c>visit.documentation</c>.</param>
    /// <param name="week">The visits.</param>
    /// <param name="roads">The map.</param>
    /// <param name="now">Now, branch time.</param>
    public static ImmutableArray<DayReserve> Of(AgencyRoster roster, PolicyBook policy, PlannedWeek week, RoadTravel roads, LocalDateTime now)
    {
        var calendar = new PlanCalendar(roster.Profile.Zone, week.FirstDay, 7);
        ReserveRules rules = Rules(policy, week.FirstDay);
        var slots = new FreeSlots(rules.SlotMinutes, (int)policy.ValueOf("visit.documentation", week.FirstDay));
        int minute = calendar.Minute(now.Date, now.TimeOfDay);
        ILookup<(string, LocalDate), BusyTime> busy = week.Visits.OrderBy(v => calendar.Minute(v.Day, v.Start))
            .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (Seat: (n, v.Day), Time: new BusyTime(roads.PlaceOfPatient(v.Patient.Value), calendar.Minute(v.Day, v.Start), v.Minutes))))
            .ToLookup(s => s.Seat, s => s.Time);
        return [.. Enumerable.Range(0, 7).Select(day =>
        {
            LocalDate date = week.FirstDay.PlusDays(day);
            var working = roster.Nurses
                .Select(n => (Nurse: n, Shift: NurseCalendar.ShiftOn(n, day, calendar, policy)))
                .Where(w => w.Shift is { OnCall: false } shift && shift.To > minute)
                .Select(w => (w.Nurse.Name, Free: slots.Of(w.Shift!, minute, busy[(w.Nurse.Id, date)], roads.Times, roads.PlaceOfNurse(w.Nurse.Id))))
                .ToArray();
            return new DayReserve(date, rules.AskedOf(working.Length), working.Sum(n => n.Free), [.. working.Where(n => n.Free > 0).Select(n => n.Name)]);
        })];
    }
}
