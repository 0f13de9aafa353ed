using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Nurse files as the planner's nurses: shifts of the horizon, leave taken out, licences by day.</summary>
public static class NurseCalendar
{
    public static Nurse Of(NurseFile file, RoadTravel roads, PlanCalendar calendar, PolicyBook policy, ImmutableArray<string> compactStates) => new()
    {
        Id = file.Id,
        Name = file.Name,
        Home = roads.PlaceOfNurse(file.Id),
        Shifts = [.. Enumerable.Range(0, calendar.DayCount).Select(day => ShiftOn(file, day, calendar, policy)).OfType<Shift>()],
        Skills = CredentialScope.Within(file, policy, calendar.FirstDay),
        SkillEnds = [.. file.SignOffs.Select(s => new SkillEnd(s.Skill, calendar.Day(s.ValidThrough)))],
        Licences = [.. from licence in file.Licences
                       from state in StatesOf(licence, compactStates)
                       select new Licence(state, licence.ValidThrough is { } last ? calendar.Day(last) : int.MaxValue)],
        Traits = file.Traits,
        MaxVisitsADay = file.MaxVisitsADay,
        Caps = Caps(file, policy, calendar.FirstDay),
    };

    /// <summary>What was agreed with the nurse goes before what holds for everybody.</summary>
    private static ImmutableArray<VisitCap> Caps(NurseFile file, PolicyBook policy, LocalDate on)
    {
        ImmutableArray<VisitCap> own = [.. file.VisitCaps.Select(c => new VisitCap(c.Kind, c.Most, c.AWeek))];
        return own.Any(c => c is { Kind: CareKinds.StartOfCare, AWeek: false }) || !file.Skills.Contains(CareKinds.StartOfCare)
            ? own
            : [.. own, new VisitCap(CareKinds.StartOfCare, (int)policy.ValueOf("starts.perday.max", on))];
    }

    /// <summary>Why a nurse does not work on a day, in words; empty when she does.</summary>
    public static string AbsenceOn(NurseFile file, LocalDate date)
    {
        if (file.Leaves.FirstOrDefault(l => date >= l.From && date <= l.Through) is { } leave)
            return leave.IsAllDay(date) ? leave.Reason : $"{leave.Reason} from {leave.FromTime:HH:mm}";
        return file.Week.Any(w => w.Weekday == date.DayOfWeek && !w.OnCall) ? "" : "off";
    }

    /// <summary>A multistate licence of a state of the compact covers the others of it; a single-state one its own.</summary>
    private static ImmutableArray<string> StatesOf(StateLicence licence, ImmutableArray<string> compactStates) =>
        licence.Compact && compactStates.Contains(licence.State) ? compactStates : [licence.State];

    /// <summary>Her shift of a day, leave taken out; empty when she is not there.</summary>
    internal static Shift? ShiftOn(NurseFile file, int day, PlanCalendar calendar, PolicyBook policy)
    {
        LocalDate date = calendar.Date(day);
        if (file.Leaves.Any(l => l.IsAllDay(date))) return null;
        WorkingTime? hours = file.Week.FirstOrDefault(w => w.Weekday == date.DayOfWeek && !w.OnCall)
            ?? file.Week.FirstOrDefault(w => w.Weekday == date.DayOfWeek);
        if (hours is null) return null;
        int from = calendar.Minute(date, hours.From);
        int to = calendar.Minute(date, hours.To) + (hours.To <= hours.From ? PlanCalendar.MinutesADay : 0);
        if (file.Leaves.FirstOrDefault(l => l.From == date && l.FromTime is not null) is { FromTime: { } leaves })
        {
            // She works until she leaves, and no overtime after it.
            to = Math.Min(to, calendar.Minute(date, leaves));
            if (to <= from) return null;
            file = file with { OvertimeMinutes = 0, LunchMinutes = 0 };
        }

        return new Shift(
            day,
            from,
            to,
            to + file.OvertimeMinutes,
            file.LunchMinutes,
            Math.Clamp(calendar.Minute(date, HourOf(policy, "lunch.from", date)), from, to),
            Math.Clamp(calendar.Minute(date, HourOf(policy, "lunch.to", date)), from, to),
            hours.OnCall);
    }

    private static LocalTime HourOf(PolicyBook policy, string rule, LocalDate date) =>
        LocalTime.Midnight.PlusMinutes((long)(policy.ValueOf(rule, date) * 60));
}
