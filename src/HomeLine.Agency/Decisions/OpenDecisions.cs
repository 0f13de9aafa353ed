using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>Works out what waits for a licensed person: from the clocks, the calls, the plan and the orders, less what was decided. Pure.</summary>
public static class OpenDecisions
{
    /// <summary>Every open question of the agency: what cannot wait first, then the oldest.</summary>
    public static ImmutableArray<OpenDecision> Of(DecisionFacts facts)
    {
        IEnumerable<OpenDecision> asked = facts.Agency.Roster.Patients
            .SelectMany(p => OfClocks(facts.Agency, p.Id))
            .Concat(facts.Agency.Roster.Patients.SelectMany(ProtectedWish.Of))
            .Concat(facts.Stopped.Select(r => Stopped(r, facts.Agency)))
            .Concat(facts.Weeks.SelectMany(w => w.Visits).Where(v => v.Held is not null && IsAhead(v, facts.Agency)).Select(v => Held(v, facts.Agency)))
            .Concat(facts.Requests.Select(r => OpenDecision.Of(r.Patient, r.Line, AppDecisionCodes.OrderRequested, r.Sentence, r.Id, r.AskedOn)))
            .Concat(SkinHarm.Of(facts.Harms, facts.Agency));
        return StillOpen(asked, facts.Records, facts.Agency.Today)
            .OrderBy(d => d.Right.Group)
            .ThenBy(d => d.Since ?? LocalDate.MinIsoValue)
            .ThenBy(d => d.Key, StringComparer.Ordinal)
            .ToImmutableArray();
    }

    /// <summary>What the clocks and the ledger of one patient ask, decided or not.</summary>
    public static IEnumerable<OpenDecision> OfClocks(AgencyAtHand agency, PatientId patient)
    {
        PatientCare care = agency.Files[patient];
        CareAnswer answer = agency.Files.WhatIsDue(patient, agency.Now);
        return OfAnswer(answer)
            .Concat(RefusedCare.Twice(care, agency.Now))
            .Concat(EndedExceptions.Of(care, agency.Today));
    }

    /// <summary>Takes out what was decided, and every second question of the same key.</summary>
    public static IEnumerable<OpenDecision> StillOpen(IEnumerable<OpenDecision> asked, ImmutableArray<DecisionRecord> records, LocalDate today)
    {
        var decided = records.ToLookup(r => r.Key, StringComparer.Ordinal);
        foreach (OpenDecision question in asked.DistinctBy(d => d.Key, StringComparer.Ordinal))
        {
            ImmutableArray<DecisionRecord> before = [.. decided[question.Key]];
            if (!before.Any(r => Closes(r, today))) yield return question with { Round = before.Length };
        }
    }

    /// <summary>A lock and a question about the same reading are one question; a lock nobody lifts is none.</summary>
    private static IEnumerable<OpenDecision> OfAnswer(CareAnswer answer)
    {
        foreach (LineLock locked in answer.Locks.Where(l => l.Code.Length > 0))
        {
            string about = locked.Lumen is { } lumen ? $"{locked.About} lumen {lumen}".Trim() : locked.About;
            yield return OpenDecision.Of(answer.Patient, locked.Line, locked.Code, locked.Reason, about, locked.Since) with { IsLocked = true };
        }

        foreach (Decision asked in answer.Decisions)
            yield return OpenDecision.Of(asked.Patient, asked.Line, asked.Code, asked.Sentence, asked.About, asked.Since);
    }

    private static bool Closes(DecisionRecord record, LocalDate today) =>
        DecisionRights.IsSettledByRecord(record.Code, record.Choice) && !(record.Until < today);

    private static OpenDecision Stopped(FiledReport report, AgencyAtHand agency) => OpenDecision.Of(
        report.Patient,
        report.Line,
        AppDecisionCodes.ScreenStopped,
        $"{report.Report.Caller} called at {report.FiledAt.InZone(agency.Roster.Profile.Zone).LocalDateTime.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture)}: "
            + $"{report.Result?.Screen.Stopped?.Text ?? "The symptom screen stopped."} Answered yes or do not know. The line is locked and the coming visits are held.",
        report.Id,
        report.FiledAt.InZone(agency.Roster.Profile.Zone).Date);

    private static OpenDecision Held(WeekVisit visit, AgencyAtHand agency) => OpenDecision.Of(
        visit.Patient,
        null,
        AppDecisionCodes.VisitHeld,
        $"The visit on {visit.Day.ToString("ddd d MMM", CultureInfo.InvariantCulture)} {visit.Start:HH:mm} with "
            + $"{agency.Roster.Nurses.FirstOrDefault(n => n.Id == visit.Nurse)?.Name ?? visit.Nurse} is held: {visit.Held}",
        visit.Id,
        null);

    private static bool IsAhead(WeekVisit visit, AgencyAtHand agency) =>
        visit.Day.At(visit.Start).PlusMinutes(visit.Minutes) >= agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
}
