using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.CheckIns;

/// <summary>Somebody to call, in order.</summary>
/// <param name="Who">Name.</param>
/// <param name="Number">Telephone number; empty when none is known.</param>
public sealed record NumberToCall(string Who, string Number);

/// <summary>No sign came in time from who is at a home that asks for one.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="PatientName">Whose home.</param>
/// <param name="Sentence">What is missing, and since when.</param>
/// <param name="Calls">Whom to call, in this order.</param>
/// <param name="EmergencyNumber">When nobody answers.</param>
public sealed record MissedCheckIn(string Visit, string PatientName, string Sentence, ImmutableArray<NumberToCall> Calls, string EmergencyNumber)
{
    /// <summary>Nurses who are there, or should be.</summary>
    public required int People { get; init; }
}

/// <summary>
/// The timer of homes that are entered by two people only, and of others that ask for it: a sign on arrival, a sign when they are out again. A signed record stands for both. Pure.
/// </summary>
internal static class SafetyTimer
{
    /// <summary>Whether a home asks for signs.</summary>
    public static bool Asks(Patient patient) => patient.CrewSize > 1 || patient.AsksForSigns;

    /// <summary>Those whose time is up, the longest first.</summary>
    public static ImmutableArray<MissedCheckIn> Missed(AgencyAtHand agency, PlannedWeek? week, IReadOnlyCollection<CheckIn> signs, IReadOnlyCollection<VisitRecord> records)
    {
        var homes = agency.Roster.Patients.Where(Asks).ToDictionary(p => p.Id);
        return
        [
            .. from visit in week?.Visits ?? []
               where visit.Day == agency.Today && visit.Held is null && homes.ContainsKey(visit.Patient)
               let missing = Missing(visit, agency, signs, records)
               where missing is not null && missing.Value.By <= agency.Now
               orderby missing.Value.By
               select Of(visit, homes[visit.Patient], missing.Value.IsOut, missing.Value.By, agency),
        ];
    }

    /// <summary>The sign that comes next, and by when; nothing once they are out.</summary>
    private static (bool IsOut, Instant By)? Missing(WeekVisit visit, AgencyAtHand agency, IReadOnlyCollection<CheckIn> signs, IReadOnlyCollection<VisitRecord> records)
    {
        if (records.Any(r => r.Visit == visit.Id) || signs.Any(s => s.Visit == visit.Id && s.IsOut)) return null;
        Duration grace = Duration.FromMinutes((long)agency.Files.Policy.ValueOf("checkin.grace", visit.Day));
        if (signs.Where(s => s.Visit == visit.Id).OrderBy(s => s.At).FirstOrDefault() is { } arrived)
            return (true, arrived.At + Duration.FromMinutes(visit.Minutes) + grace);
        Instant told = visit.Day.At(visit.ToldFrom ?? visit.Start).InZoneLeniently(agency.Roster.Profile.Zone).ToInstant();
        return (false, told + Duration.FromMinutes((long)agency.Files.Policy.ValueOf("told.range", visit.Day)) + grace);
    }

    private static MissedCheckIn Of(WeekVisit visit, Patient patient, bool isOut, Instant by, AgencyAtHand agency)
    {
        NurseFile[] there = [.. new[] { visit.Nurse, visit.Second }.OfType<string>().Select(id => agency.Roster.Nurses.FirstOrDefault(n => n.Id == id)).OfType<NurseFile>()];
        string who = string.Join(" and ", there.Select(n => n.Name));
        string until = by.InZone(agency.Roster.Profile.Zone).TimeOfDay.ToString("HH:mm", CultureInfo.InvariantCulture);
        return new MissedCheckIn(
            visit.Id, patient.Name,
            isOut ? $"No sign that {who} {Are(there)} out again at {patient.Name}: due by {until}." : $"No sign that {who} arrived at {patient.Name}, {DayWords.When(visit)}: due by {until}.",
            [
                .. there.Select(n => new NumberToCall(n.Name, n.Phone)),
                new NumberToCall(patient.Name, patient.Phone),
                new NumberToCall("clinical manager on call", agency.Roster.Profile.OnCallPhone),
            ],
            agency.Roster.Profile.EmergencyNumber)
        {
            People = there.Length,
        };
    }

    private static string Are(NurseFile[] there) => there.Length == 1 ? "is" : "are";
}
