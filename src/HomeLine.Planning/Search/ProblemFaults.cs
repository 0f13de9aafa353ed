using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Search;

/// <summary>Mistakes of the caller in a problem; each is refused with a sentence that names it.</summary>
internal static class ProblemFaults
{
    /// <exception cref="ArgumentException">The problem contradicts itself.</exception>
    public static void Refuse(WeekProblem problem)
    {
        if (First(problem) is { } fault) throw new ArgumentException(fault, nameof(problem));
    }

    private static string? First(WeekProblem problem)
    {
        if (problem.DayCount is < 1 or > 28) return $"A horizon of {problem.DayCount} days cannot be planned; 1 to 28 can.";
        return Twice(problem.Nurses.Select(n => n.Id), "nurse")
            ?? Twice(problem.Patients.Select(p => p.Id), "patient")
            ?? Twice(problem.Tasks.Select(t => t.Id), "task")
            ?? InTasks(problem)
            ?? InShifts(problem)
            ?? InSlowHours(problem)
            ?? InFixedVisits(problem);
    }

    private static string? Twice(IEnumerable<string> ids, string what) =>
        ids.GroupBy(i => i, StringComparer.Ordinal).FirstOrDefault(g => g.Skip(1).Any()) is { } twice
            ? $"There are two {what}s called {twice.Key}."
            : null;

    private static string? InTasks(WeekProblem problem)
    {
        var patients = problem.Patients.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        foreach (CareTask task in problem.Tasks)
        {
            if (!patients.Contains(task.Patient)) return $"Task {task.Id} names patient {task.Patient}, who is not in the problem.";
            if (task.SetupMinutes < 0 || task.WorkMinutes < 0) return $"Task {task.Id} has negative minutes.";
            if (task.Weight < 0) return $"Task {task.Id} has a negative weight.";
        }

        return null;
    }

    private static string? InShifts(WeekProblem problem)
    {
        foreach (Nurse nurse in problem.Nurses)
        {
            if (nurse.Shifts.GroupBy(s => s.Day).FirstOrDefault(g => g.Skip(1).Any()) is { } day)
                return $"{nurse.Name} has two shifts on day {day.Key}.";
            if (nurse.Shifts.FirstOrDefault(s => s.To < s.From || s.OvertimeTo < s.To) is { } wrong)
                return $"A shift of {nurse.Name} on day {wrong.Day} ends before it begins.";
        }

        return null;
    }

    private static string? InSlowHours(WeekProblem problem)
    {
        SlowHours[] slow = [.. problem.SlowHours.OrderBy(s => s.From)];
        if (slow.FirstOrDefault(s => s.To <= s.From) is { } empty) return $"The slow hours from {PlanClock.Say(problem.FirstDay, empty.From)} end before they begin.";
        if (slow.FirstOrDefault(s => s.SpeedPercent is < 1 or > 100) is { } speed)
            return $"The slow hours from {PlanClock.Say(problem.FirstDay, speed.From)} have a speed of {speed.SpeedPercent} percent; 1 to 100 can be planned.";
        for (int i = 1; i < slow.Length; i++)
        {
            if (slow[i].From < slow[i - 1].To) return $"Two slow times overlap at {PlanClock.Say(problem.FirstDay, slow[i].From)}.";
        }

        return null;
    }

    private static string? InFixedVisits(WeekProblem problem)
    {
        var patients = problem.Patients.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        var nurses = problem.Nurses.Select(n => n.Id).ToHashSet(StringComparer.Ordinal);
        var tasks = problem.Tasks.ToDictionary(t => t.Id, t => t.Patient, StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (PlannedVisit visit in problem.FixedVisits())
        {
            if (!patients.Contains(visit.Patient)) return $"Fixed visit {visit.Id} names patient {visit.Patient}, who is not in the problem.";
            if (!nurses.Contains(visit.Nurse) || (visit.Second is { } s && !nurses.Contains(s)))
                return $"Fixed visit {visit.Id} names a nurse who is not in the problem.";
            if (visit.Tasks.IsDefaultOrEmpty) return $"Fixed visit {visit.Id} does nothing.";
            if (visit.Tasks.FirstOrDefault(t => !tasks.TryGetValue(t, out string? p) || p != visit.Patient || !seen.Add(t)) is { } task)
                return $"Fixed visit {visit.Id} does task {task}, which is not that patient's, not in the problem, or done twice.";
        }

        return null;
    }
}
