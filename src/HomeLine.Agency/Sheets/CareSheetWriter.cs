using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>Fills a care sheet from the ledger, the validations and the published week. Pure.</summary>
internal static class CareSheetWriter
{
    private const string EachContainer = "With each new bag or dose";

    public static CareSheetContent Of(Patient patient, AgencyAtHand agency, PlannedWeek? week, PrintedCareSheet? last)
    {
        PatientCare care = agency.Files[patient.Id];
        CareAnswer answer = agency.Files.WhatIsDue(patient.Id, agency.Now);
        DateTimeZone home = patient.Zone;
        ImmutableArray<WeekVisit> visits = ComingVisits(patient, agency, week);
        return new CareSheetContent
        {
            AgencyName = agency.Roster.Profile.Name,
            PatientName = patient.Name,
            Number = (last?.Number ?? 0) + 1,
            PrintedAt = agency.Now.InZone(home).LocalDateTime,
            Replaces = last is null ? null : (last.Number, last.PrintedAt.InZone(home).Date),
            DayPhone = agency.Roster.Profile.DayPhone,
            OnCallPhone = agency.Roster.Profile.OnCallPhone,
            EmergencyNumber = agency.Roster.Profile.EmergencyNumber,
            MainMessage = MainMessage(visits, agency, home, answer.OnHold),
            Tasks = Tasks(care, answer, visits, agency),
            Locks = [.. answer.Locks.Select(l => $"Do not use the {LineName(l.Line, care)} until your nurse says you can.").Distinct()],
            NeverWait = StandingTexts.NeverWait,
            CallNow = StandingTexts.CallNow(agency.Files.Policy.ValueOf("fever.call", agency.Today)),
            CallToday = StandingTexts.CallToday,
            LooksGood = StandingTexts.LooksGood,
            NotToUse = NotToUse(care, agency),
            IsDemo = agency.Roster.Profile.IsDemo,
        };
    }

    private static ImmutableArray<WeekVisit> ComingVisits(Patient patient, AgencyAtHand agency, PlannedWeek? week)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        return [.. (week?.Visits ?? [])
            .Where(v => v.Patient == patient.Id && v.Held is null && v.Day.At(v.Start) >= now)
            .OrderBy(v => v.Day).ThenBy(v => v.Start)];
    }

    private static string MainMessage(ImmutableArray<WeekVisit> visits, AgencyAtHand agency, DateTimeZone home, Hold? hold)
    {
        if (hold is not null) return "Your home visits are on hold. Call us when you are back home.";
        if (visits.IsEmpty) return "We will call you to set the time of your next visit.";
        WeekVisit next = visits[0];
        int minutes = (int)agency.Files.Policy.ValueOf("told.range", next.Day);
        LocalDateTime from = next.Day.At(next.ToldFrom ?? next.Start).InZoneLeniently(agency.Roster.Profile.Zone).WithZone(home).LocalDateTime;
        return $"Your nurse comes on {LongDay(from.Date)}, between {Clock(from.TimeOfDay)} and {Clock(from.TimeOfDay.PlusMinutes(minutes))}.";
    }

    private static ImmutableArray<SheetTask> Tasks(PatientCare care, CareAnswer answer, ImmutableArray<WeekVisit> visits, AgencyAtHand agency)
    {
        var chores = Chore.Of(care, answer).SelectMany(c => c.Windows.Select(w => (Window: w, c.Key))).ToLookup(x => x.Window, x => x.Key);
        var orders = care.Orders.ToDictionary(o => o.Id);
        bool manyLines = answer.Windows.Select(w => w.Line).OfType<LineId>().Distinct().Count() > 1;
        var tasks = new List<(SheetTask Task, Instant By)>();
        Instant newsUntil = agency.Now + Duration.FromDays((int)agency.Files.Policy.ValueOf("sheet.ahead", agency.Today));
        foreach (DueWindow window in answer.Windows.Where(w => w.Opens < newsUntil))
        {
            if (PlainTasks.Of(window.Item, window.Order is { } id ? orders.GetValueOrDefault(id) : null) is not { } words) continue;
            if (manyLines && window.Line is { } line) words += $", {LineName(line, care)}";
            bool theirs = window.Owner == PerformerKind.Caregiver;
            string whose = theirs ? You(Person(care, window.Item, window.Line, agency.Today)) : window.Owner == PerformerKind.Outside ? "Clinic" : "Nurse";
            tasks.Add((new SheetTask(words, whose, theirs, When(window, theirs, visits, chores[window].FirstOrDefault())), window.LateFrom));
        }

        return
        [
            .. SetsOfTheHousehold(care, answer, manyLines, agency.Today),
            .. tasks.OrderByDescending(t => t.Task.IsTheirs).ThenBy(t => t.By).Select(t => t.Task).Distinct(),
        ];
    }

    /// <summary>A set that goes with each container has no date of its own until one is recorded, but it is the household's daily task.</summary>
    private static IEnumerable<SheetTask> SetsOfTheHousehold(PatientCare care, CareAnswer answer, bool manyLines, LocalDate today) => care.Infusions
        .Where(i => i.SetChangedBy == PerformerKind.Caregiver && !answer.Windows.Any(w => w.Item == CareItem.Set && w.Line == i.Line))
        .Select(i => (Infusion: i, Person: Person(care, CareItem.Set, i.Line, today)))
        .Where(x => x.Person.Length > 0)
        .Select(x => new SheetTask(
            "Change the tubing" + (manyLines ? $", {LineName(x.Infusion.Line, care)}" : ""), You(x.Person), true, EachContainer));

    private static string You(string person) => person is "self" or "" ? "You" : $"You ({person})";

    private static string Person(PatientCare care, CareItem item, LineId? line, LocalDate today) => care.Caregivers
        .FirstOrDefault(c => c.Item == item && c.ValidThrough >= today && (c.Line is null || c.Line == line))?.Person ?? "";

    private static string When(DueWindow window, bool theirs, ImmutableArray<WeekVisit> visits, string? key)
    {
        if (theirs && window.Item == CareItem.Set) return EachContainer;
        WeekVisit? visit = key is null ? null : visits.FirstOrDefault(v => v.Care.Any(c => c.Key == key));
        if (visit is not null) return LongDay(visit.Day);
        if (window.Standing == WindowStanding.DateUnknown) return "At the next visit";
        return $"By {LongDay(window.LastDay)}";
    }

    private static ImmutableArray<string> NotToUse(PatientCare care, AgencyAtHand agency)
    {
        var never = ImmutableArray.CreateBuilder<string>();
        if (!Materials.ChlorhexidineAllowed(care, agency.Files.Policy, agency.Today).Allowed) never.Add("No cleaner or dressing with chlorhexidine.");
        if (care.Risks.HasFlag(RiskFactors.AdhesiveInjury)) never.Add("No strong tape on the skin.");
        return never.ToImmutable();
    }

    /// <summary>The kind of line in plain words; two of a kind are told apart by their side.</summary>
    private static string LineName(LineId id, PatientCare care)
    {
        Line line = care.Lines.First(l => l.Id == id);
        string kind = PlainTasks.Of(line.Kind);
        bool isOnlyOne = care.Lines.Count(l => l.Kind == line.Kind) == 1;
        return isOnlyOne || line.Site.Length == 0 ? kind : $"{line.Site.Split(' ')[0]} {kind}";
    }

    private static string LongDay(LocalDate date) => date.ToString("dddd, MMMM d", CultureInfo.InvariantCulture);

    private static string Clock(LocalTime time) =>
        time.ToString("h:mm tt", CultureInfo.InvariantCulture).ToLowerInvariant();
}
