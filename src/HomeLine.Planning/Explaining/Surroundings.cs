using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Explaining;

/// <summary>
/// The part of a large plan around one patient: nurses who live nearest or visit her, with everything they do. Trying changes there costs little, and what
/// it finds holds in the whole plan, since nobody outside is touched.
/// </summary>
internal static class Surroundings
{
    /// <summary>Nurses kept by nearness of their homes; a problem with few more is taken whole.</summary>
    private const int NearNurses = 12, Whole = 16;

    public static (WeekProblem Problem, ImmutableArray<PlannedVisit> Visits) Of(
        WeekProblem problem, ImmutableArray<PlannedVisit> visits, PatientHome patient, IReadOnlySet<string> tasks)
    {
        if (problem.Nurses.Length <= Whole) return (problem, visits);
        var names = problem.Nurses.OrderBy(n => problem.Travel.Minutes(n.Home, patient.Place)).Take(NearNurses).Select(n => n.Id)
            .Concat(visits.Where(v => v.Patient == patient.Id).Select(v => v.Nurse)).ToHashSet(StringComparer.Ordinal);
        while (Add(names, visits.Where(v => v.Second is not null && (names.Contains(v.Nurse) || names.Contains(v.Second))))) { }
        ImmutableArray<PlannedVisit> kept = [.. visits.Where(v => names.Contains(v.Nurse))];
        ImmutableArray<PlannedVisit> published = problem.Published is { Visits.IsDefault: false } p
            ? [.. p.Visits.Where(v => names.Contains(v.Nurse) && (v.Second is null || names.Contains(v.Second)))]
            : [];
        var people = kept.Concat(published).Select(v => v.Patient).Append(patient.Id).ToHashSet(StringComparer.Ordinal);
        var care = kept.Concat(published).SelectMany(v => v.Tasks).Concat(tasks).ToHashSet(StringComparer.Ordinal);
        WeekProblem part = problem with
        {
            Nurses = [.. problem.Nurses.Where(n => names.Contains(n.Id))],
            Patients = [.. problem.Patients.Where(h => people.Contains(h.Id))],
            Tasks = [.. problem.Tasks.Where(t => care.Contains(t.Id))],
            Published = problem.Published is null ? null : problem.Published with { Visits = published },
        };
        return (part, kept);
    }

    private static bool Add(HashSet<string> names, IEnumerable<PlannedVisit> pairs)
    {
        bool more = false;
        foreach (PlannedVisit pair in pairs.ToArray()) more |= names.Add(pair.Nurse) | names.Add(pair.Second!);
        return more;
    }
}
