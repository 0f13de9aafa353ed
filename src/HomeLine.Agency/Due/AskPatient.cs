using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Due;

/// <summary>One patient with lines, ledger and the windows ahead; and the way to find one in a few keystrokes.</summary>
public sealed class AskPatient(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    private const int MostFound = 20;

    /// <summary>Needs <see cref="AgencyAction.SeePatient"/>. An unknown patient is refused with <c>patient-unknown</c>.</summary>
    public async Task<Outcome<PatientOverview>> AskAsync(Actor actor, PatientId patient, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        Patient? found = agency.Roster.Patients.FirstOrDefault(p => p.Id == patient);
        if (found is null) return new Refusal("patient-unknown", "There is no such patient.", "Go back to the list and choose again.");
        StoredWeek? week = await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel);
        return Overview(found, agency, [.. (week?.Week.Visits ?? []).Where(v => v.Patient == patient)]);
    }

    /// <summary>Patients whose name or identifier holds the text, at most 20, those that begin with it first.</summary>
    public async Task<Outcome<ImmutableArray<FoundPatient>>> FindAsync(Actor actor, string text, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeePatient) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyRoster roster = read.Value.Roster;
        string wanted = text.Trim();
        return roster.Patients
            .Where(p => Rank(p, wanted) < int.MaxValue)
            .OrderBy(p => Rank(p, wanted))
            .ThenBy(p => p.Name, StringComparer.Ordinal)
            .Take(MostFound)
            .Select(p => new FoundPatient(p.Id, p.Name, DueRows.PlaceOf(p, roster.Map)))
            .ToImmutableArray();
    }

    private static PatientOverview Overview(Patient patient, AgencyAtHand agency, ImmutableArray<WeekVisit> visits)
    {
        PatientCare care = agency.Files[patient.Id];
        CareAnswer answer = agency.Files.WhatIsDue(patient.Id, agency.Now);
        var nurses = agency.Roster.Nurses.ToDictionary(n => n.Id, n => n.Name);
        return new PatientOverview(
            patient,
            care.Lines,
            [.. DueRows.Of(patient, agency.Files, agency.Roster.Map, visits, nurses, agency.Now).OrderBy(r => r.Urgency).ThenBy(r => r.Window.LateFrom)],
            [.. care.Events.OrderByDescending(e => e.Performed?.Date ?? LocalDate.MinIsoValue).ThenByDescending(e => e.RecordedAt)],
            care.Orders,
            care.Caregivers,
            answer.OnHold,
            answer.Locks,
            agency.Questions(patient.Id),
            [.. visits.OrderBy(v => v.Day).ThenBy(v => v.Start)])
        {
            Screen = ScreenContext.Of(care, agency.Files.Policy, agency.Today),
            Frequency = FrequencyLedger.Of(care, visits, agency.Roster.SignedVisits, agency.Files.Policy, agency.Now),
            InPlace = care.InPlace(agency.Now),
            Exceptions = care.Exceptions,
            ToldMinutes = (int)agency.Files.Policy.ValueOf("told.range", agency.Today),
        };
    }

    private static int Rank(Patient patient, string text)
    {
        if (text.Length == 0 || patient.Name.StartsWith(text, StringComparison.OrdinalIgnoreCase)) return 0;
        if (patient.Id.Value.StartsWith(text, StringComparison.OrdinalIgnoreCase)) return 1;
        return patient.Name.Contains(text, StringComparison.OrdinalIgnoreCase) ? 2 : int.MaxValue;
    }
}

/// <summary>A patient found by name or identifier.</summary>
public sealed record FoundPatient(PatientId Id, string Name, string Place);
