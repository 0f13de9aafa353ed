using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The towns a nurse belongs to in a week, so that a large agency can look at one part of it.</summary>
internal static class AreasOf
{
    /// <summary>The town nearest her home first, then those nearest her visits; none when the agency's map has no towns.</summary>
    public static ImmutableArray<string> Nurse(NurseFile nurse, PlannedWeek week, IReadOnlyDictionary<PatientId, Patient> patients, AgencyMap map) =>
        [.. week.Visits.Where(v => v.Nurse == nurse.Id || v.Second == nurse.Id).Select(v => patients[v.Patient].Home).Prepend(nurse.Home).Select(at => Nearest(at, map)).OfType<string>().Distinct()];

    private static string? Nearest(MapPoint at, AgencyMap map) =>
        map.Towns.MinBy(t => Math.Pow(t.At.X - at.X, 2) + Math.Pow(t.At.Y - at.Y, 2))?.Name;
}
