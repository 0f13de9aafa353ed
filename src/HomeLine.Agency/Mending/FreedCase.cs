using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>
/// Time that became free before a visit that cannot wait: it could be earlier. Only offered: the family was told a time, and a second call is theirs to accept. Pure.
/// </summary>
internal static class FreedCase
{
    /// <summary>Visits of today that are cut short or without a date and could be earlier by what policy asks.</summary>
    /// <param name="setting">The week as it stands.</param>
    /// <param name="nurses">Whose days are looked at.</param>
    public static ImmutableArray<MendAnswer> Answers(MendSetting setting, ImmutableArray<string> nurses)
    {
        int least = (int)setting.Agency.Files.Policy.ValueOf("earlier.least", setting.Agency.Today);
        IEnumerable<MendAnswer> found = setting.Week.Visits
            .Where(v => v.Day == setting.Agency.Today && v.Held is null && v.Second is null && nurses.Contains(v.Nurse))
            .Select(v => Earlier(v, setting, least)).OfType<MendAnswer>();
        return [.. found.Take(3).Select((answer, i) => answer with { Key = ((char)('A' + i)).ToString() })];
    }

    private static MendAnswer? Earlier(WeekVisit visit, MendSetting setting, int least)
    {
        CareTask? task = setting.Standing.Problem.Tasks.FirstOrDefault(t => t.Id == visit.Id);
        int start = setting.Calendar.Minute(visit.Day, visit.Start);
        if (task is not { Safety: true } || start <= setting.Now + setting.Standing.Problem.Rules.FrozenAheadMinutes) return null;
        int earliest = EarliestStart(visit, setting);
        if (start - earliest < least || !Fits(visit, earliest, setting)) return null;
        WeekVisit after = visit with { Start = setting.Calendar.Local(earliest).TimeOfDay, ToldFrom = setting.Calendar.Local(earliest).TimeOfDay };
        string name = setting.People.Name(visit.Patient), nurse = setting.People.NurseName(visit.Nurse);
        return new MendAnswer
        {
            Key = "",
            Title = $"{nurse} at {name} by {DayWords.Time(after.Start)} instead of {DayWords.Time(visit.Start)}",
            Changes = [new VisitChange(visit, after, $"{name} moves from {DayWords.Time(visit.Start)} to {DayWords.Time(after.Start)}, {start - earliest} min earlier.", earliest - start)],
            Price = new MendPrice { Families = 1, Nurses = 1, Disruption = setting.Standing.Problem.Rules.Disruption.MovedTold + setting.Standing.Problem.Rules.Disruption.PhoneCall },
            ToTell =
            [
                setting.People.Family(visit.Patient, $"Could the nurse come earlier, on {DayWords.Range(after, setting.ToldMinutes)}? {DayWords.Time(visit.Start)} was promised; ask before it is changed."),
                setting.People.Nurse(visit.Nurse, $"{name} at {DayWords.Time(after.Start)} instead of {DayWords.Time(visit.Start)}. Read it when parked."),
            ],
            Cautions = [$"{DayWords.Time(visit.Start)} was promised to the family. Ask them first."],
        };
    }

    /// <summary>As soon as she can be there: from her home when her shift begins, from where she is, or from her visit before.</summary>
    private static int EarliestStart(WeekVisit visit, MendSetting setting)
    {
        WeekProblem problem = setting.Standing.Problem;
        int there = setting.Roads.PlaceOfPatient(visit.Patient.Value), home = setting.Roads.PlaceOfNurse(visit.Nurse);
        Shift? shift = problem.Nurses.First(n => n.Id == visit.Nurse).Shifts.FirstOrDefault(s => s.Day == setting.Calendar.Day(visit.Day) && !s.OnCall);
        WeekVisit? before = setting.Week.Visits
            .Where(v => v.Day == visit.Day && (v.Nurse == visit.Nurse || v.Second == visit.Nurse) && v.Start < visit.Start).MaxBy(v => v.Start);
        int leave = before is null
            ? Math.Max(shift?.From ?? 0, setting.Now)
            : Math.Max(setting.Calendar.Minute(before.Day, before.Start) + before.Minutes + problem.Rules.DocumentationMinutes, setting.Now);
        int from = before is null ? home : setting.Roads.PlaceOfPatient(before.Patient.Value);
        return leave + TripTimes.Of(problem).Leaving(from, there, leave);
    }

    /// <summary>The checker has to accept the earlier start as readily as the week as it stands.</summary>
    private static bool Fits(WeekVisit visit, int start, MendSetting setting)
    {
        WeekPlan plan = setting.Standing.Plan;
        WeekPlan earlier = plan with { Visits = [.. plan.Visits.Select(v => v.Id == visit.Id ? v with { Start = start } : v).OrderBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)] };
        return Checker.Check(setting.Standing.Problem, earlier).Findings.Length <= Checker.Check(setting.Standing.Problem, plan).Findings.Length;
    }
}
