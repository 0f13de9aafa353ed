using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using NodaTime;

namespace HomeLine.Agency.Caregivers;

/// <summary>A caregiver's validation that has lapsed or soon will, while somebody can still renew it in time.</summary>
/// <param name="Validation">The validation.</param>
/// <param name="PatientName">Whose caregiver.</param>
/// <param name="TaskLabel">The task.</param>
/// <param name="HasLapsed">It is over: the task falls to the nurse.</param>
public sealed record LapsingRow(CaregiverValidation Validation, string PatientName, string TaskLabel, bool HasLapsed)
{
    /// <summary>Those that end within the days policy names, and those that are over and were not renewed; the soonest first. Pure.</summary>
    public static ImmutableArray<LapsingRow> Of(AgencyAtHand agency)
    {
        var names = agency.Roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        LocalDate soon = agency.Today.PlusDays((int)agency.Files.Policy.ValueOf("validation.caregiver.early", agency.Today));
        return
        [
            .. agency.Roster.Caregivers
                .Where(v => v.ValidThrough <= soon)
                .OrderBy(v => v.ValidThrough).ThenBy(v => v.Patient.Value, StringComparer.Ordinal).ThenBy(v => v.Item)
                .Select(v => new LapsingRow(v, names[v.Patient], CareLabels.Of(v.Item), v.ValidThrough < agency.Today)),
        ];
    }
}
