using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Due;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Windows;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Draws a stored week as a board: nurses by days, stops to time, travel between, the checker's verdict.</summary>
public static class WeekBoards
{
    public static WeekBoard Of(AgencyRoster roster, CareFiles files, PlannedWeek week, bool isDraft, Instant plannedAt, Instant now, ImmutableArray<RoadShut> closures = default)
    {
        StandingWeek standing = StandingWeek.Of(roster, files, week, now).WithClosures(closures.IsDefault ? [] : closures, roster);
        CheckReport check = Checker.Check(standing.Problem, standing.Plan);
        ImmutableArray<LocalDate> days = [.. Enumerable.Range(0, 7).Select(week.FirstDay.PlusDays)];
        var patients = roster.Patients.ToDictionary(p => p.Id);
        var tasks = standing.Problem.Tasks.ToDictionary(t => t.Id);
        var locks = week.Visits.Select(v => v.Patient).Distinct().ToDictionary(p => p, p => LocksOf(files, p, now));
        var rows = roster.Nurses.Select(n => new NurseRow(
            n.Id,
            n.Name,
            n.Credential,
            [.. days.Select(d => Cell(n, d, week, roster, files, patients, tasks, standing, locks))])
        {
            Areas = AreasOf.Nurse(n, week, patients, roster.Map),
        });
        return new WeekBoard(week, isDraft, days, [.. rows], week.Unmet, check, plannedAt)
        {
            Reserve = DayReserve.Of(roster, files.Policy, week, RoadTravel.Of(roster), now.InZone(roster.Profile.Zone).LocalDateTime),
        };
    }

    private static NurseDayCell Cell(
        NurseFile nurse,
        LocalDate day,
        PlannedWeek week,
        AgencyRoster roster,
        CareFiles files,
        Dictionary<LineCare.Lines.PatientId, Patient> patients,
        Dictionary<string, CareTask> tasks,
        StandingWeek standing,
        Dictionary<LineCare.Lines.PatientId, ImmutableArray<string>> locks)
    {
        WorkingTime? hours = nurse.Week.FirstOrDefault(w => w.Weekday == day.DayOfWeek && !w.OnCall);
        string absence = NurseCalendar.AbsenceOn(nurse, day);
        var stops = ImmutableArray.CreateBuilder<BoardStop>();
        DayRoute route = DayRoute.Of(roster, files, week, nurse.Id, day, standing);
        foreach (DayLeg leg in route.Stops)
        {
            WeekVisit visit = leg.Visit;
            Patient patient = patients[visit.Patient];
            tasks.TryGetValue(visit.Id, out CareTask? task);
            bool late = task is not null && standing.Calendar.Minute(visit.Day, visit.Start) >= task.LateFrom;
            stops.Add(new BoardStop(
                visit,
                patient.Name,
                DueRows.PlaceOf(patient, roster.Map),
                visit.Second == nurse.Id,
                leg.TravelBefore,
                visit.Start.PlusMinutes(visit.Minutes),
                late,
                Why(visit, task, standing))
            {
                Locks = locks[visit.Patient],
                HandIn = leg.HandIn,
                TravelToHandIn = leg.TravelToHandIn,
                ToldMinutes = standing.Problem.Rules.ToldRangeMinutes,
            });
        }

        return new NurseDayCell(day, absence.Length > 0 ? null : hours?.From, absence.Length > 0 ? null : hours?.To, absence, stops.ToImmutable(), route.DrivingMinutes, route.Stops.Sum(s => s.Visit.Minutes));
    }

    private static ImmutableArray<string> LocksOf(CareFiles files, LineCare.Lines.PatientId patient, Instant now) =>
        [.. files.WhatIsDue(patient, now).Locks.Select(l => $"{l.Line}: {l.Reason}")];

    /// <summary>Why the visit stands where it does: each item's window with its reason, then what narrows the start and the choice of nurse.</summary>
    private static ImmutableArray<string> Why(WeekVisit visit, CareTask? task, StandingWeek standing)
    {
        if (task is null) return visit.Held is { } held ? [held] : [];
        var why = ImmutableArray.CreateBuilder<string>();
        foreach (CareNeed need in standing.Needs[visit.Id])
        {
            DueWindow window = need.Windows[0];
            string days = window.OpensOn == window.LastDay ? Text(window.LastDay) : $"{Text(window.OpensOn)} to {Text(window.LastDay)}";
            why.Add($"{need.Task.Label}: {days}. {window.Because.Sentence}");
        }

        if (!task.StartSpans.IsEmpty)
        {
            PlanCalendar calendar = standing.Calendar;
            Span span = task.StartSpans.FirstOrDefault(s => calendar.Local(s.From).Date == visit.Day, task.StartSpans[0]);
            why.Add($"Must start between {calendar.Local(span.From):HH:mm} and {calendar.Local(span.To):HH:mm}.");
        }

        if (!task.Skills.IsEmpty) why.Add($"Needs a nurse with {string.Join(", ", task.Skills)}.");
        return why.ToImmutable();
    }

    private static string Text(LocalDate date) => date.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
