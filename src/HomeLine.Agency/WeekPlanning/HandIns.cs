using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>A nurse hands specimens in between two visits, or before she goes home.</summary>
/// <param name="After">The visit she comes from.</param>
/// <param name="Drop">The drop point's name.</param>
/// <param name="Place">Its place on the planner's map.</param>
/// <param name="At">When she is there.</param>
/// <param name="Leave">When she drives on.</param>
/// <param name="Courier">The collection the specimens go with.</param>
/// <param name="Patients">Whose specimens, by name.</param>
public sealed record HandIn(string After, string Drop, int Place, LocalTime At, LocalTime Leave, LocalTime Courier, ImmutableArray<string> Patients);

/// <summary>Where a nurse hands her specimens in on a day, read from the starts of her visits exactly as the checker does; none where policy says that somebody else takes them. Pure.</summary>
public static class HandIns
{
    public static ImmutableArray<HandIn> Of(AgencyRoster roster, CareFiles files, PlannedWeek week, string nurse, LocalDate day, RoadTravel roads)
    {
        if (files.Policy.ValueOf("specimen.handin", day) <= 0) return [];
        WeekVisit[] visits = [.. week.Visits.Where(v => v.Day == day && v.Held is null && (v.Nurse == nurse || v.Second == nurse))];
        int most = (int)files.Policy.ValueOf("specimen.drawtodrop.max", day);
        ImmutableArray<CareTask> draws = [.. visits.Where(v => v.Nurse == nurse && GoesWithTheCourier(v, files)).Select(v => Draw(v, most))];
        if (draws.IsEmpty) return [];
        var calendar = new PlanCalendar(roster.Profile.Zone, day, 1);
        WeekProblem problem = ProblemOf(roster, files, visits, nurse, draws, roads, calendar);
        var names = roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        var byId = visits.ToDictionary(v => v.Id);
        return
        [
            .. DropStops.Of(problem, new WeekPlan([.. visits.Select(v => Planned(v, calendar))], [], default)).Where(s => s.Nurse == nurse).Select(s => new HandIn(
                s.After,
                s.Name,
                s.Place,
                calendar.Local(s.Arrive).TimeOfDay,
                calendar.Local(s.Leave).TimeOfDay,
                calendar.Local(problem.DropPoints.First(d => d.Place == s.Place).Cutoffs.First(c => c >= s.Arrive)).TimeOfDay,
                [.. s.Visits.Select(v => names[byId[v].Patient])])),
        ];
    }

    /// <summary>Some of its care is an order whose specimen needs the courier; the key of such care ends with the order.</summary>
    private static bool GoesWithTheCourier(WeekVisit visit, CareFiles files)
    {
        var orders = files[visit.Patient].Orders.Where(o => o.NeedsCourier).Select(o => o.Id).ToHashSet(StringComparer.Ordinal);
        return orders.Count > 0 && visit.Care.Any(c => orders.Contains(c.Key.Split('|')[^1]));
    }

    private static WeekProblem ProblemOf(
        AgencyRoster roster, CareFiles files, WeekVisit[] visits, string nurse, ImmutableArray<CareTask> draws, RoadTravel roads, PlanCalendar calendar) => new()
        {
            FirstDay = calendar.FirstDay,
            DayCount = 1,
            Travel = roads.Times,
            SlowHours = roads.SlowHoursOf(calendar),
            Nurses = [new Nurse { Id = nurse, Name = nurse, Home = roads.PlaceOfNurse(nurse), Shifts = [], Skills = [], Licences = [] }],
            Patients =
            [
                .. visits.Select(v => v.Patient.Value).Distinct().Select(p => new PatientHome { Id = p, Name = p, Place = roads.PlaceOfPatient(p), State = "" }),
            ],
            Tasks = draws,
            Rules = WeekDemand.Rules(files.Policy, calendar.FirstDay),
            DropPoints = WeekDemand.DropPoints(roster, roads, calendar),
        };

    private static CareTask Draw(WeekVisit visit, int most) => new()
    {
        Id = visit.Id,
        Patient = visit.Patient.Value,
        Label = "draw",
        Opens = 0,
        LateFrom = PlanCalendar.MinutesADay,
        SetupMinutes = 0,
        WorkMinutes = visit.Minutes,
        Weight = 0,
        DrawToDropMinutes = most,
    };

    private static PlannedVisit Planned(WeekVisit visit, PlanCalendar calendar) => new()
    {
        Id = visit.Id,
        Patient = visit.Patient.Value,
        Nurse = visit.Nurse,
        Second = visit.Second,
        Start = calendar.Minute(visit.Day, visit.Start),
        Minutes = visit.Minutes,
        Tasks = [visit.Id],
    };
}
