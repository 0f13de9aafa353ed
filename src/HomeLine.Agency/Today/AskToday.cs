using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.Visits;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Today;

/// <summary>What is open now, for whoever runs the day.</summary>
public sealed class AskToday(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.ReportProblem"/>.</summary>
    public async Task<Outcome<TodayBoard>> AskAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.ReportProblem) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        AgencyAtHand agency = read.Value;
        PlannedWeek? week = (await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel))?.Week;
        Instant since = HandOverCard.Since(agency);
        List<FiledTrouble> troubles = await db.Troubles.AsNoTracking()
            .Where(t => t.State == TroubleState.Open || t.State == TroubleState.Stopped || t.FiledAt >= since).ToListAsync(cancel);
        List<FiledReport> reports = await db.Reports.AsNoTracking()
            .Where(r => r.Outcome == ReportOutcome.Offered || r.Outcome == ReportOutcome.Stopped || r.FiledAt >= since).ToListAsync(cancel);
        List<ToTell> calls = await db.ToTell.AsNoTracking().Where(t => t.DoneAt == null).ToListAsync(cancel);
        PublishedVersion? version = week is null ? null : await db.PublishedVersions.AsNoTracking()
            .SingleOrDefaultAsync(v => v.FirstDay == week.FirstDay && v.Version == week.Version, cancel);
        LocalDate today = agency.Today;
        List<VisitRecord> records = await db.VisitRecords.AsNoTracking().Where(r => r.Day == today && r.Visit != null).ToListAsync(cancel);
        List<FiledTrouble> closures = await db.Troubles.AsNoTracking()
            .Where(t => t.State != TroubleState.Closed && t.Title.StartsWith(ClosureCase.TitleBegins)).ToListAsync(cancel);
        List<CheckIn> signs = await db.CheckIns.AsNoTracking().Where(c => c.Day == today).ToListAsync(cancel);
        return Of(agency, week, troubles, reports, calls, records) with
        {
            MissedCheckIns = SafetyTimer.Missed(agency, week, signs, records),
            WeekReason = version is null ? "" : $"{version.PublishedBy}: {version.Reason}",
            Closures = Standing(closures, agency),
        };
    }

    /// <summary>Pure.</summary>
    internal static TodayBoard Of(AgencyAtHand agency, PlannedWeek? week, IReadOnlyCollection<FiledTrouble> troubles, IReadOnlyCollection<FiledReport> reports,
        IEnumerable<ToTell> calls, IReadOnlyCollection<VisitRecord> records)
    {
        HashSet<string?> recorded = [.. records.Select(r => r.Visit)];
        var names = agency.Roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        var nurses = agency.Roster.Nurses.ToDictionary(n => n.Id, n => n.Name);
        ImmutableArray<VisitToday> all = [.. (week?.Visits ?? [])
            .Where(v => v.Day >= agency.Today).OrderBy(v => v.Day).ThenBy(v => v.Start)
            .Select(v => new VisitToday(v, names.GetValueOrDefault(v.Patient, v.Patient.Value), nurses.GetValueOrDefault(v.Nurse, v.Nurse), recorded.Contains(v.Id) ? VisitStanding.Over : Standing(v, agency)))];
        // Who is alerted because of a red flag comes before everybody else.
        var alerts = reports.Where(r => r.Outcome == ReportOutcome.Stopped).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<VisitToday> today = [.. all.Where(v => v.Visit.Day == agency.Today)];
        return new TodayBoard(
            agency.Now,
            [.. reports.Where(r => r.Outcome == ReportOutcome.Stopped).OrderBy(r => r.FiledAt)
                .Select(r => new OpenItem(r.Id, $"{names[r.Patient]}: red flag on the phone", r.FiledAt, "A licensed person decides.", null, r.Patient))],
            [.. troubles.Where(t => t.State == TroubleState.Open).Select(Item)
                .Concat(reports.Where(r => r.Outcome == ReportOutcome.Offered).Select(r => Item(r, names[r.Patient])))
                .OrderBy(o => o.By ?? o.At)],
            [.. calls.OrderBy(c => c.Report is null || !alerts.Contains(c.Report)).ThenBy(c => c.Person.By).ThenBy(c => c.Id.Length).ThenBy(c => c.Id, StringComparer.Ordinal)],
            [.. all.Where(v => v.Visit.Held is not null)],
            today,
            Earlier(agency, week, today),
            HandOverCard.Of(agency, troubles, reports),
            HandOverCard.Since(agency))
        {
            Nurses = [.. agency.Roster.Nurses.Select(n => new NurseToday(n.Id, n.Name, n.Credential, NurseCalendar.AbsenceOn(n, agency.Today)))],
            LateStarts = LateStarts.Of(agency, week, records),
            Places = [.. HeldPlaces.Of(agency).Select(h => new PlaceToday(h.Trouble, h.Name, nurses.GetValueOrDefault(h.Place.Nurse, h.Place.Nurse), h.Place.Day.At(h.Place.Start), h.Place.Until)).OrderBy(p => p.At)],
            Lessons = [.. all.Where(v => v.Standing is VisitStanding.Ahead or VisitStanding.Frozen && LessonCase.HasLesson(v.Visit, agency))],
            Clinics = [.. ClinicCase.Awaited(agency)
                .Where(a => !troubles.Any(t => t is { Entry: ClinicSilent, State: TroubleState.Open } && t.Patient == a.Expected.Patient))
                .Select(a => new ClinicToday(a.Expected.Patient, names[a.Expected.Patient], a.Expected.Where, a.Expected.ExpectedOn, a.Expected.FallBackFrom, a.IsOverdue))
                .OrderByDescending(c => c.IsOverdue).ThenBy(c => c.ReportBy)],
            WeekVersion = week?.Version ?? 0,
        };
    }

    private static ImmutableArray<ClosureToday> Standing(IEnumerable<FiledTrouble> closures, AgencyAtHand agency)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        return [.. closures.Select(t => (t.Id, Shut: t.Entry as RoadShut)).Where(c => c.Shut is not null && c.Shut.Ends > now)
            .Select(c => new ClosureToday(c.Id, StandingClosures.Words(c.Shut!, agency.Roster.Map), c.Shut!.From, c.Shut.Ends, c.Shut.Why)).OrderBy(c => c.To)];
    }

    private static OpenItem Item(FiledTrouble trouble) => new(
        trouble.Id, trouble.Title, trouble.FiledAt,
        trouble.Offer?.Next is { } next ? next.What : "An answer has to be chosen.",
        trouble.Offer?.Next?.By, trouble.Patient);

    private static OpenItem Item(FiledReport report, string name) => new(
        report.Id, $"{name}: dressing reported", report.FiledAt, "An answer has to be chosen.", report.Result?.Offer?.LastAcceptable, report.Patient);

    private static VisitStanding Standing(WeekVisit visit, AgencyAtHand agency)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime, start = visit.Day.At(visit.Start);
        if (start.PlusMinutes(visit.Minutes) <= now) return VisitStanding.Over;
        if (start <= now) return VisitStanding.UnderWay;
        return start < now.PlusMinutes((int)agency.Files.Policy.ValueOf("frozen.ahead", agency.Today)) ? VisitStanding.Frozen : VisitStanding.Ahead;
    }

    /// <summary>Looked for only where an urgent visit of today lies ahead; most days there is none.</summary>
    private static ImmutableArray<VisitToday> Earlier(AgencyAtHand agency, PlannedWeek? week, ImmutableArray<VisitToday> today)
    {
        if (week is null || !today.Any(v => v.Standing == VisitStanding.Ahead && v.Visit.Held is null && IsUrgent(v.Visit, agency))) return [];
        var found = FreedCase.Answers(new MendSetting(agency, week), [.. today.Select(v => v.Visit.Nurse).Distinct()])
            .SelectMany(a => a.Changes).Select(c => c.Before!.Id).ToHashSet(StringComparer.Ordinal);
        return [.. today.Where(v => found.Contains(v.Visit.Id))];
    }

    private static bool IsUrgent(WeekVisit visit, AgencyAtHand agency) =>
        agency.Files.WhatIsDue(visit.Patient, agency.Now).Windows.Any(w => w.SealClass > 0);
}
