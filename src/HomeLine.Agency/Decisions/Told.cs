using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>Who must be told of a decision, and nobody else. Pure.</summary>
internal static class Told
{
    /// <summary>Minutes within which people are told: our own default.</summary>
    private const int SoonMinutes = 15;

    public static ImmutableArray<PersonToTell> LineReleased(Patient patient, LineId? line, AgencyAtHand agency) =>
        [Family(patient, $"{line} may be used again as ordered. A licensed person decided.", agency)];

    public static ImmutableArray<PersonToTell> LineLocked(Patient patient, LineId? line, AgencyAtHand agency) =>
        [Family(patient, $"Do not use {line} until we call again.", agency)];

    public static ImmutableArray<PersonToTell> OfVisits(
        ImmutableArray<WeekVisit> visits, Patient patient, DecisionMade made, AgencyAtHand agency)
    {
        var people = ImmutableArray.CreateBuilder<PersonToTell>();
        string what = made.Choice switch
        {
            DecisionChoice.ReleaseVisits => "goes ahead",
            DecisionChoice.ToHospital => "is off: the patient goes to hospital",
            _ => "is off",
        };
        foreach (WeekVisit visit in visits)
        {
            string when = $"{visit.Day.ToString("ddd d MMM", CultureInfo.InvariantCulture)} {visit.Start:HH:mm}";
            foreach (string nurse in (ImmutableArray<string>)(visit.Second is { } second ? [visit.Nurse, second] : [visit.Nurse]))
            {
                NurseFile? file = agency.Roster.Nurses.FirstOrDefault(n => n.Id == nurse);
                people.Add(new PersonToTell(file?.Name ?? nurse, Phone(file?.Phone ?? ""), $"The visit to {patient.Name} on {when} {what}.", By(agency)));
            }

            if (made.Choice != DecisionChoice.ToHospital) people.Add(Family(patient, $"The visit on {when} {what}.", agency));
        }

        if (made.Choice == DecisionChoice.ToHospital && patient.Practitioner.Length > 0)
            people.Add(new PersonToTell(patient.Practitioner, "phone, number on the plan of care", $"{patient.Name} goes to hospital.", By(agency)));
        return people.ToImmutable();
    }

    private static PersonToTell Family(Patient patient, string what, AgencyAtHand agency) => new(
        patient.Contact.Length > 0 ? $"{patient.Contact}, {patient.Name}" : patient.Name, Phone(patient.Phone), what, By(agency));

    private static Instant By(AgencyAtHand agency) => agency.Now + Duration.FromMinutes(SoonMinutes);

    private static string Phone(string number) => number.Length > 0 ? $"phone {number}" : "phone: number missing, use the other contact";
}
