using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The free slots of a day for care nobody planned, against the reserve of policy.</summary>
/// <param name="Day">The day.</param>
/// <param name="Asked">Slots to keep free: one for so many nurses begun; 0 when nobody works.</param>
/// <param name="Free">Slots free.</param>
/// <param name="Nurses">Names of the nurses who have a free slot.</param>
public sealed record DayReserve(LocalDate Day, int Asked, int Free, ImmutableArray<string> Nurses)
{
    public bool IsKept => Free >= Asked;

    /// <summary>Free slots of a week. What lies behind now is no longer free and no longer asked for.</summary>
    /// <param name="roster">The nurses.</param>
    /// <param name="policy">Policy values <c>reserve.nursesperslot</c>, <c>reserve.slot</c> and <c>visit.documentation</c>.</param>
    /// <param name="week">The visits.</param>
    /// <param name="roads">The map.</param>
    /// <param name="now">Now, branch time.</param>
    public static ImmutableArray<DayReserve> Of(AgencyRoster roster, PolicyBook policy, PlannedWeek week, RoadTravel roads, LocalDateTime now)
    {
        int perSlot = Math.Max(1, (int)policy.ValueOf("reserve.nursesperslot", week.FirstDay));
        var slots = new FreeSlots((int)policy.ValueOf("reserve.slot", week.FirstDay), (int)policy.ValueOf("visit.documentation", week.FirstDay));
        return [.. Enumerable.Range(0, 7).Select(week.FirstDay.PlusDays).Select(day =>
        {
            int from = day < now.Date ? int.MaxValue : day == now.Date ? Minute(now.TimeOfDay) : 0;
            var working = roster.Nurses
                .Select(n => (n.Name, n.LunchMinutes, Shift: ShiftOn(n, day), Visits: week.Visits.Where(v => v.Day == day && (v.Nurse == n.Id || v.Second == n.Id)).OrderBy(v => v.Start).ToArray(), n.Id))
                .Where(n => n.Shift is { } shift && Minute(shift.To) > from)
                .Select(n => (n.Name, Free: slots.Of(Math.Max(from, Minute(n.Shift!.From)), Minute(n.Shift.To), n.LunchMinutes, n.Visits, roads, roads.PlaceOfNurse(n.Id))))
                .ToArray();
            return new DayReserve(day, (working.Length + perSlot - 1) / perSlot, working.Sum(n => n.Free), [.. working.Where(n => n.Free > 0).Select(n => n.Name)]);
        })];
    }

    private static WorkingTime? ShiftOn(NurseFile nurse, LocalDate day) =>
        NurseCalendar.AbsenceOn(nurse, day).Length > 0 ? null : nurse.Week.FirstOrDefault(w => w.Weekday == day.DayOfWeek && !w.OnCall);

    private static int Minute(LocalTime time) => (time.Hour * 60) + time.Minute;
}
