using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Kits;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>Fills a nurse's day sheet from the published week. No therapy, no diagnosis. Pure.</summary>
internal static class DaySheetWriter
{
    public static DaySheetContent Of(NurseFile nurse, LocalDate day, AgencyAtHand agency, PlannedWeek week)
    {
        var patients = agency.Roster.Patients.ToDictionary(p => p.Id);
        DayRoute route = DayRoute.Of(agency.Roster, agency.Files, week, nurse.Id, day);
        return new DaySheetContent
        {
            AgencyName = agency.Roster.Profile.Name,
            NurseName = nurse.Name,
            Day = day,
            PrintedAt = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime,
            PlanVersion = week.Version,
            CoordinatorPhone = agency.Roster.Profile.DayPhone,
            OnCallPhone = agency.Roster.Profile.OnCallPhone,
            EmergencyNumber = agency.Roster.Profile.EmergencyNumber,
            Stops = [.. route.Stops.Select(s => Stop(s, patients[s.Visit.Patient], nurse, agency))],
            DrivingMinutes = route.DrivingMinutes,
            Paid = route.Stops.IsEmpty ? "" : Paid(PaidDay.Of(nurse, route.Stops, route.DrivingMinutes, RoadTravel.Of(agency.Roster), agency.Files.Policy), PaidRules.Of(agency.Files.Policy, day)),
            IsDemo = agency.Roster.Profile.IsDemo,
        };
    }

    private static string Paid(PaidDay paid, PaidRules rules) => string.Create(CultureInfo.InvariantCulture,
        $"Estimate by policy: {paid.Minutes / 60} h {paid.Minutes % 60} min and {paid.Miles:0.0} of {paid.DrivenMiles:0.0} miles paid. {rules.Words}");

    private static DayStop Stop(DayLeg leg, Patient patient, NurseFile nurse, AgencyAtHand agency)
    {
        WeekVisit visit = leg.Visit;
        PatientCare care = agency.Files[patient.Id];
        CareAnswer answer = agency.Files.WhatIsDue(patient.Id, agency.Now);
        int range = (int)agency.Files.Policy.ValueOf("told.range", visit.Day);
        LocalTime told = visit.ToldFrom ?? visit.Start;
        return new DayStop
        {
            Start = visit.Start,
            ToldFrom = told,
            ToldTo = told.PlusMinutes(range),
            PatientName = patient.Name,
            Address = patient.Address,
            Phone = patient.Phone,
            AccessNotes = patient.AccessNotes,
            Minutes = visit.Minutes,
            TravelMinutesBefore = leg.TravelBefore,
            HandIn = leg.HandIn,
            TravelToHandIn = leg.TravelToHandIn,
            ToDo = visit.Second == nurse.Id ? [SecondPerson(visit, patient, agency)] : ToDo(visit, care, answer),
            Bring = KitList.Of(visit, care, agency.Files.Policy).Things,
            Unusual = Unusual(visit, patient, care, answer, nurse, agency),
            OtherZoneRange = OtherZone(visit.Day, told, range, patient, agency),
        };
    }

    private static string SecondPerson(WeekVisit visit, Patient patient, AgencyAtHand agency) => patient.CrewSize > 1
        ? "Second person: come with the nurse, start together."
        : $"Ride-along: come with {agency.Roster.Nurses.FirstOrDefault(n => n.Id == visit.Nurse)?.Name ?? visit.Nurse}, start together, look on. Record it under Decisions afterwards.";

    private static ImmutableArray<string> ToDo(WeekVisit visit, PatientCare care, CareAnswer answer)
    {
        ILookup<string, DueWindow> windows = Chore.Of(care, answer).ToLookup(c => c.Key, c => c.Lead);
        return [.. visit.Care.Select(c => Meant(windows[c.Key], visit.Day) is { } window
            ? $"{Capital(c.Label)}: last day {window.LastDay.ToString("ddd MMM d", CultureInfo.InvariantCulture)}"
            : Capital(c.Label))];
    }

    /// <summary>Care ordered day by day has a window for each day: the one this visit is made for, or the last when all lie behind it.</summary>
    private static DueWindow? Meant(IEnumerable<DueWindow> windows, LocalDate day) =>
        windows.OrderBy(w => w.LastDay).FirstOrDefault(w => w.LastDay >= day) ?? windows.MaxBy(w => w.LastDay);

    private static ImmutableArray<string> Unusual(
        WeekVisit visit, Patient patient, PatientCare care, CareAnswer answer, NurseFile nurse, AgencyAtHand agency)
    {
        var unusual = ImmutableArray.CreateBuilder<string>();
        if (visit.Held is { } held) unusual.Add($"{held} Do not ring the bell before.");
        MaterialAnswer chlorhexidine = Materials.ChlorhexidineAllowed(care, agency.Files.Policy, visit.Day);
        if (!chlorhexidine.Allowed) unusual.Add($"No chlorhexidine. {chlorhexidine.Reason}");
        if (care.Risks.HasFlag(RiskFactors.AdhesiveInjury)) unusual.Add("Past skin injury from adhesive.");
        unusual.AddRange(answer.Locks.Select(l => $"{l.Line.Value}: {l.Reason}"));
        unusual.AddRange(agency.Questions(patient.Id).Where(d => answer.Locks.All(l => l.Code != d.Code || l.Line != d.Line)).Select(d => d.Sentence));
        if (patient.CrewSize > 1) unusual.Add("Two persons, same start. Never go in alone.");
        else if (patient.AsksForSigns) unusual.Add("Give a sign on arrival and one when you are out again: on your day, or by a call to the coordinator.");
        if (patient.Language is not ("en" or "") && !nurse.Traits.Contains($"language:{patient.Language}"))
            unusual.Add($"Interpreter by phone needed ({CultureInfo.GetCultureInfo(patient.Language).EnglishName}).");
        return unusual.ToImmutable();
    }

    private static string OtherZone(LocalDate day, LocalTime told, int range, Patient patient, AgencyAtHand agency)
    {
        if (patient.ZoneId == agency.Roster.Profile.ZoneId) return "";
        LocalTime there = day.At(told).InZoneLeniently(agency.Roster.Profile.Zone).WithZone(patient.Zone).TimeOfDay;
        return string.Create(CultureInfo.InvariantCulture, $"{there:HH:mm} to {there.PlusMinutes(range):HH:mm} local time there");
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
