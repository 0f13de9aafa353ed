using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>
/// Whether visits that must stay fit the picture of nurse-days: no rule is held against them, so they may lie where no nurse-day could have them. A week with such a
/// visit is refused with a sentence rather than bounded wrongly.
/// </summary>
internal static class StayingVisits
{
    /// <exception cref="ArgumentException">A visit that must stay lies where no nurse-day of the week can have it.</exception>
    public static void Refuse(WeekProblem problem)
    {
        if (Fault(problem) is { } fault) throw new ArgumentException($"{fault} Such a week cannot be bounded.", nameof(problem));
    }

    public static int DayOf(int minute) => (int)Math.Floor(minute / 1440.0);

    private static string? Fault(WeekProblem problem)
    {
        PlannedVisit[] visits = [.. problem.FixedVisits()];
        var homes = problem.Patients.ToDictionary(p => p.Id, StringComparer.Ordinal);
        if (visits.GroupBy(v => (v.Patient, DayOf(v.Start))).FirstOrDefault(g => g.Skip(1).Any()) is { } twice)
            return $"{homes[twice.Key.Patient].Name} has two visits that must stay on one day.";
        return Apart(problem, visits) ?? visits
            .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>(), (v, nurse) => (Nurse: nurse, Visit: v))
            .GroupBy(p => (p.Nurse, Day: DayOf(p.Visit.Start)))
            .Select(g => OfDay(problem, problem.Nurses.First(n => n.Id == g.Key.Nurse), g.Key.Day, [.. g.Select(p => p.Visit).OrderBy(v => v.Start)], homes))
            .OfType<string>().FirstOrDefault();
    }

    private static string? OfDay(WeekProblem problem, Nurse nurse, int day, PlannedVisit[] visits, Dictionary<string, PatientHome> homes)
    {
        if (nurse.Shifts.FirstOrDefault(s => s.Day == day && !s.OnCall) is not { } shift || day < 0 || day >= problem.DayCount)
            return $"Visit {visits[0].Id} must stay on a day on which {nurse.Name} has no shift.";
        if (visits.Length > nurse.MaxVisitsADay) return $"{nurse.Name} has more visits that must stay than she takes a day.";
        int place = nurse.Home, leave = shift.From;
        foreach (PlannedVisit visit in visits)
        {
            if (leave + problem.Travel.Minutes(place, homes[visit.Patient].Place) > visit.Start) return $"Visit {visit.Id} must stay and cannot be reached in time.";
            (place, leave) = (homes[visit.Patient].Place, visit.Start + visit.Minutes + problem.Rules.DocumentationMinutes);
        }

        return leave + problem.Travel.Minutes(place, nurse.Home) > shift.OvertimeTo ? $"{nurse.Name} is home too late after visit {visits[^1].Id}, which must stay." : null;
    }

    /// <summary>Care of a chain closer together than it may be, both in visits that must stay.</summary>
    private static string? Apart(WeekProblem problem, PlannedVisit[] visits)
    {
        var of = visits.SelectMany(v => v.Tasks, (v, t) => (Visit: v, Task: t)).ToDictionary(p => p.Task, p => p.Visit, StringComparer.Ordinal);
        foreach (CareTask task in problem.Tasks)
        {
            if (task.After is not { } before || !of.TryGetValue(task.Id, out PlannedVisit? then) || !of.TryGetValue(before, out PlannedVisit? first)) continue;
            int gap = task.GapInDays ? (DayOf(then.Start) - DayOf(first.Start)) * 1440 : then.Start - first.Start;
            if (gap < task.MinGap) return $"Visits {first.Id} and {then.Id} must stay and are too close together.";
        }

        return null;
    }
}
