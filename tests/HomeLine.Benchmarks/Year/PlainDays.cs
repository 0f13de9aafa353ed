using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary>
/// Routes as somebody writes them by hand: a visit goes to the nearest nurse who may make it and still has room, at the end of her day. It keeps the same
/// hard rules as the program: skills, licence, who is at work, shift and overtime, visits a day.
/// </summary>
internal sealed class PlainDays
{
    private const int MostVisits = 7;
    private readonly YearWorld _world;
    private readonly WeekDemand _demand;
    private readonly RoadTravel _roads;
    private readonly int _documentation;
    private readonly List<WeekVisit> _visits;

    public PlainDays(YearWorld world, IEnumerable<WeekVisit> visits, LocalDate monday)
    {
        _world = world;
        _demand = WeekDemand.Of(world.Roster, world.Files, monday, 7, world.Now);
        _roads = RoadTravel.Of(world.Roster);
        _documentation = (int)world.Files.Policy.ValueOf("visit.documentation", world.Today);
        _visits = [.. visits];
    }

    public ImmutableArray<WeekVisit> Visits => [.. _visits.OrderBy(v => v.Day).ThenBy(v => v.Start)];

    /// <summary>What a patient needs that may be done on a day.</summary>
    public ImmutableArray<CareNeed> OpenOn(PatientId patient, LocalDate day)
    {
        int end = _demand.Calendar.Minute(day.PlusDays(1), LocalTime.Midnight), begin = _demand.Calendar.Minute(day, LocalTime.Midnight);
        return [.. _demand.Needs.Values.Where(n => n.Patient == patient && n.Task.After is null && n.Task.Opens < end && n.Task.HardLatest >= begin).OrderBy(n => n.Task.Id, StringComparer.Ordinal)];
    }

    public IEnumerable<CareNeed> Needs => _demand.Needs.Values.Where(n => n.Task.After is null);

    public PlanCalendar Calendar => _demand.Calendar;

    public void Cancel(Predicate<WeekVisit> which) => _visits.RemoveAll(which);

    /// <summary>Puts a visit at the end of the day of the nearest nurse who may make it and has room.</summary>
    public bool Append(PatientId patient, LocalDate day, int notBefore = int.MinValue)
    {
        ImmutableArray<CareNeed> care = OpenOn(patient, day);
        if (care.IsEmpty) return true;
        string[] skills = [.. care.SelectMany(n => n.Task.Skills).Distinct()];
        int minutes = care.Max(n => n.Task.SetupMinutes) + care.Sum(n => n.Task.WorkMinutes), place = _roads.PlaceOfPatient(patient.Value), index = _demand.Calendar.Day(day);
        PatientHome home = _demand.Problem.Patients.First(p => p.Id == patient.Value);
        var nurses = _demand.Problem.Nurses
            .Where(n => skills.All(s => n.IsSignedOff(s, index)) && n.Licences.Any(l => l.State == home.State && l.LastDay >= index))
            .OrderBy(n => _roads.Times.Minutes(n.Home, place)).ThenBy(n => n.Id, StringComparer.Ordinal);
        foreach (Nurse nurse in nurses)
        {
            if (nurse.Shifts.FirstOrDefault(s => s.Day == index && !s.OnCall) is not { } shift) continue;
            WeekVisit[] route = [.. _visits.Where(v => v.Nurse == nurse.Id && v.Day == day).OrderBy(v => v.Start)];
            if (route.Length >= MostVisits) continue;
            (int at, int free) = route.Length == 0
                ? (nurse.Home, shift.From)
                : (_roads.PlaceOfPatient(route[^1].Patient.Value), _demand.Calendar.Minute(day, route[^1].Start) + route[^1].Minutes + _documentation);
            int start = Math.Max(free + _roads.Times.Minutes(at, place), notBefore);
            if (start + minutes + _documentation + _roads.Times.Minutes(place, nurse.Home) > shift.To) continue;
            LocalDateTime begins = _demand.Calendar.Local(start);
            _visits.Add(new WeekVisit
            {
                Id = $"{patient}-{day:MMdd}-{_world.Week.Version}-{_visits.Count}",
                Patient = patient,
                Nurse = nurse.Id,
                Day = begins.Date,
                Start = begins.TimeOfDay,
                Minutes = minutes,
                Care = [.. care.Select(n => n.AsVisitCare())],
                Promise = PromiseState.Told,
                ToldFrom = begins.TimeOfDay,
            });
            return true;
        }

        return false;
    }

    /// <summary>On the day, or on the first day after it on which somebody has room, within the week.</summary>
    public bool AppendFrom(PatientId patient, LocalDate day, int notBefore = int.MinValue)
    {
        for (LocalDate on = day; on < _demand.Calendar.FirstDay.PlusDays(7); on = on.PlusDays(1))
            if (Append(patient, on, on == day ? notBefore : int.MinValue)) return true;
        return false;
    }

    /// <summary>Visits of nurses who called out go to whoever is nearest and has room, today or later.</summary>
    public void Redistribute()
    {
        foreach (NurseFile nurse in _world.Roster.Nurses.Where(n => !n.Leaves.IsEmpty))
        {
            WeekVisit[] orphaned = [.. _visits.Where(v => v.Nurse == nurse.Id && v.Day >= nurse.Leaves[0].From && v.Day <= nurse.Leaves[0].Through)];
            _visits.RemoveAll(v => orphaned.Contains(v));
            foreach (WeekVisit visit in orphaned.OrderBy(v => v.Day).ThenBy(v => v.Start)) AppendFrom(visit.Patient, visit.Day);
        }
    }
}
