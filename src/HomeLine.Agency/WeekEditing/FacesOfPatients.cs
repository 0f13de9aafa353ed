using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Whom a patient sees: recorded nurse visits of the four weeks before, and those of the draft.</summary>
/// <param name="Patient">The patient.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Visits">Visits counted.</param>
/// <param name="Faces">Nurses, the most frequent first, with how often.</param>
/// <param name="Index">Continuity index, 0 to 1; empty with fewer than two visits.</param>
/// <param name="NewFaces">Nurses of the draft whom the patient does not know.</param>
public sealed record FacesOfPatients(
    PatientId Patient, string Name, int Visits, ImmutableArray<(string Nurse, int Visits)> Faces, double? Index, ImmutableArray<string> NewFaces)
{
    /// <summary>Most nurses in five weeks before it is said; policy value <c>faces.max</c>.</summary>
    public int MostFaces { get; init; }

    /// <summary>Whether the patient sees more nurses than that.</summary>
    public bool IsTooMany => Faces.Length > MostFaces;

    /// <summary>How far back recorded visits count: our own default.</summary>
    private const int DaysBack = 28;

    /// <summary>A row for each patient visited in the week, the least continuous first.</summary>
    public static ImmutableArray<FacesOfPatients> Of(WorkingWeek week)
    {
        AgencyRoster roster = week.Agency.Roster;
        var names = roster.Nurses.ToDictionary(n => n.Id, n => n.Name);
        int mostFaces = (int)week.Agency.Files.Policy.ValueOf("faces.max", week.FirstDay);
        LocalDate from = week.FirstDay.PlusDays(-DaysBack);
        ILookup<PatientId, string> recorded = roster.Events
            .Where(e => e.Performer == PerformerKind.Nurse && e.PerformerName.Length > 0 && e.Performed is { } done && done.Date >= from && done.Date < week.FirstDay)
            .Select(e => (e.Patient, e.Performed!.Value.Date, Name: names.GetValueOrDefault(e.PerformerName, e.PerformerName))).Distinct()
            .ToLookup(e => e.Patient, e => e.Name);
        return
        [
            .. week.Week.Visits.Where(v => !HeldPlaces.IsHeld(v.Id)).GroupBy(v => v.Patient).Select(g =>
            {
                Patient patient = roster.Patients.First(p => p.Id == g.Key);
                ImmutableArray<(string, int)> faces = [.. recorded[g.Key].Concat(g.Select(v => names.GetValueOrDefault(v.Nurse, v.Nurse)))
                    .CountBy(n => n).Select(n => (n.Key, n.Value)).OrderByDescending(n => n.Value).ThenBy(n => n.Key, StringComparer.Ordinal)];
                return new FacesOfPatients(
                    g.Key, patient.Name, faces.Sum(f => f.Item2), faces, Continuity.Index(faces.Select(f => f.Item2)),
                    [.. g.Select(v => v.Nurse).Distinct()
                        .Where(n => !patient.KnownNurses.Contains(n) && !recorded[g.Key].Contains(names.GetValueOrDefault(n, n)))
                        .Select(n => names.GetValueOrDefault(n, n))])
                {
                    MostFaces = mostFaces,
                };
            }).OrderBy(f => f.Index ?? 2).ThenBy(f => f.Patient.Value, StringComparer.Ordinal),
        ];
    }
}
