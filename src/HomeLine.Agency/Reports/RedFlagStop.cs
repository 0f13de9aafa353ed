using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>
/// What a red flag does: the line is locked for use, the patient's coming visits wait for a licensed decision, and people are alerted.
/// It finds no time and asks the planner nothing.
/// </summary>
/// <param name="Flow">What the person at the phone sees.</param>
/// <param name="Lock">The ledger entry that locks the line.</param>
/// <param name="Week">The published week with the visits held; empty when none is published.</param>
public sealed record RedFlagStop(StoppedFlow Flow, LineEvent Lock, PlannedWeek? Week)
{
    private const string HeldBecause = "Wait for the clinical manager.";

    public static RedFlagStop Of(
        AgencyRoster roster, PlannedWeek? week, ProblemReport report, ScreenOutcome screen, EventId lockId, Instant now, string? underWay = null)
    {
        Patient patient = roster.Patients.First(p => p.Id == report.Patient);
        LocalDateTime local = now.InZone(roster.Profile.Zone).LocalDateTime;
        ImmutableArray<WeekVisit> held =
            [.. (week?.Visits ?? []).Where(v => v.Patient == report.Patient && v.Id != underWay && v.Day.At(v.Start).PlusMinutes(v.Minutes) >= local)];
        var ids = held.Select(v => v.Id).ToHashSet();
        var flow = new StoppedFlow(
            screen.Wording,
            [$"{report.Line.Value}: do not use until a licensed person releases it."],
            [.. held.Select(v => $"{Day(v.Day)} {v.Start:HH:mm}, {NurseName(roster, v.Nurse)}: {HeldBecause}")],
            ToTell(roster, patient, held, screen, now));
        return new RedFlagStop(
            flow,
            LockEntry(report, patient, screen, lockId, now),
            week is null ? null : week with { Visits = [.. week.Visits.Select(v => ids.Contains(v.Id) ? v with { Held = HeldBecause } : v)] });
    }

    private static ImmutableArray<PersonToTell> ToTell(
        AgencyRoster roster, Patient patient, ImmutableArray<WeekVisit> held, ScreenOutcome screen, Instant now)
    {
        string what = $"{patient.Name}: {screen.Stopped?.Text ?? "symptom screen stopped"} Answered yes or do not know. Call back now.";
        var people = ImmutableArray.CreateBuilder<PersonToTell>();
        people.Add(new PersonToTell("Clinical manager on duty", $"phone {roster.Profile.OnCallPhone}", what, now) { Number = roster.Profile.OnCallPhone });
        people.Add(new PersonToTell(patient.Practitioner.Length > 0 ? patient.Practitioner : "Practitioner", "phone, number on the plan of care", what, now));
        foreach (WeekVisit visit in held.DistinctBy(v => v.Nurse))
        {
            NurseFile? nurse = roster.Nurses.FirstOrDefault(n => n.Id == visit.Nurse);
            people.Add(new PersonToTell(
                nurse?.Name ?? visit.Nurse, $"phone {nurse?.Phone}", $"Visit on {Day(visit.Day)} {visit.Start:HH:mm}: {HeldBecause} Do not ring the bell.", now)
            {
                Number = nurse?.Phone ?? "",
                Nurse = visit.Nurse,
            });
        }

        return people.ToImmutable();
    }

    private static LineEvent LockEntry(ProblemReport report, Patient patient, ScreenOutcome screen, EventId id, Instant now) => new()
    {
        Id = id,
        Patient = report.Patient,
        Line = report.Line,
        Kind = LineEventKind.UseLocked,
        Performed = CareMoment.Exactly(now, patient.Zone),
        RecordedAt = now,
        Performer = PerformerKind.Nurse,
        PerformerName = "agency",
        Note = $"Symptom screen stopped: {screen.Stopped?.Text}",
    };

    private static string NurseName(AgencyRoster roster, string id) => roster.Nurses.FirstOrDefault(n => n.Id == id)?.Name ?? id;

    private static string Day(LocalDate date) => date.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
