using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Due;

/// <summary>Windows as rows people read: the most pressing first, each with its words.</summary>
public static class DueRows
{
    private static readonly LocalDatePattern Days = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDateTimePattern Moments = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm");

    /// <summary>Rows of every patient, most pressing first.</summary>
    public static ImmutableArray<DueRow> Of(AgencyRoster roster, CareFiles files, PlannedWeek? published, Instant now)
    {
        var visits = (published?.Visits ?? []).ToLookup(v => v.Patient);
        var nurses = roster.Nurses.ToDictionary(n => n.Id, n => n.Name);
        return [.. roster.Patients
            .SelectMany(p => Of(p, files, roster.Map, [.. visits[p.Id]], nurses, now))
            .OrderBy(r => r.Urgency)
            .ThenBy(r => r.Window.LateFrom)
            .ThenBy(r => r.PatientName, StringComparer.Ordinal)
            .ThenBy(r => r.ItemLabel, StringComparer.Ordinal)];
    }

    /// <summary>Rows of one patient.</summary>
    public static IEnumerable<DueRow> Of(
        Patient patient,
        CareFiles files,
        AgencyMap map,
        ImmutableArray<WeekVisit> visits,
        IReadOnlyDictionary<string, string> nurses,
        Instant now)
    {
        PatientCare care = files[patient.Id];
        CareAnswer answer = files.WhatIsDue(patient.Id, now);
        var lines = care.Lines.ToDictionary(l => l.Id);
        // Told apart as they are, not by what they say: comparing windows by value would write out every reason.
        ILookup<DueWindow, string> chores = (visits.IsEmpty ? [] : Chore.Of(care, answer)).ToLookup<Chore, DueWindow, string>(c => c.Lead, c => c.Key, ReferenceEqualityComparer.Instance);
        string place = PlaceOf(patient, map);
        LocalDate today = now.InZone(patient.Zone).Date;
        foreach (ImmutableArray<DueWindow> row in InOneGo(answer.Windows))
        {
            DueWindow window = row[0];
            Line? line = window.Line is { } id ? lines[id] : null;
            Urgency urgency = UrgencyOf(window, answer.OnHold, today, now);
            yield return new DueRow(
                patient.Id,
                patient.Name,
                place,
                line is null ? "" : CareLabels.Of(line),
                ItemLabel(row, care),
                window,
                urgency,
                InWords(window, urgency, patient.Zone, now),
                PlannedFor(visits, chores[window].FirstOrDefault(), nurses))
            {
                Locks = [.. answer.Locks.Where(l => l.Line == window.Line).Select(l => l.Reason)],
            };
        }
    }

    /// <summary>The town the home is in, by the nearest town of the map; the address when the map has none.</summary>
    public static string PlaceOf(Patient patient, AgencyMap map) =>
        map.Towns.MinBy(t => Math.Pow(t.At.X - patient.Home.X, 2) + Math.Pow(t.At.Y - patient.Home.Y, 2))?.Name ?? patient.Address;

    private static Urgency UrgencyOf(DueWindow window, Hold? hold, LocalDate today, Instant now)
    {
        if (hold is not null) return Urgency.OnHold;
        if (window.IsLateAt(now)) return Urgency.Late;
        if (window.Standing == WindowStanding.CutShort) return Urgency.CutShort;
        if (window.Standing == WindowStanding.DateUnknown) return Urgency.DateUnknown;
        if (window.LastDay == today) return Urgency.DueToday;
        return window.Opens <= now ? Urgency.Open : Urgency.Ahead;
    }

    /// <summary>
    /// Windows that are answered in one go share a row: a dressing with its securement and measurement, and the lumens whose windows are the same.
    /// </summary>
    private static IEnumerable<ImmutableArray<DueWindow>> InOneGo(ImmutableArray<DueWindow> windows) => windows
        .GroupBy(w => (RowItem(w.Item), w.Line, w.Order, w.Owner, w.Standing, w.Opens, w.LateFrom, Person(w)))
        .Select(group => (ImmutableArray<DueWindow>)[.. group.OrderBy(w => w.Item).ThenBy(w => w.Lumen, StringComparer.Ordinal)]);

    private static CareItem RowItem(CareItem item) => item is CareItem.Securement or CareItem.OutsideLength ? CareItem.Dressing : item;

    /// <summary>Validations of two people stay two rows.</summary>
    private static string Person(DueWindow window) => window.Item == CareItem.CaregiverValidation ? window.Because.Sentence : "";

    private static string ItemLabel(ImmutableArray<DueWindow> row, PatientCare care)
    {
        DueWindow lead = row[0];
        if (lead.Order is { } order && care.Orders.FirstOrDefault(o => o.Id == order) is { Text.Length: > 0 } named) return named.Text;
        if (lead.Item == CareItem.CaregiverValidation) return $"{CareLabels.Of(lead.Item)}: {lead.Because.Sentence}";
        string items = string.Join(", ", row.Select(w => CareLabels.Of(w.Item)).Distinct());
        string lumens = string.Join(", ", row.Select(w => w.Lumen).OfType<string>().Distinct());
        return lumens.Length switch
        {
            0 => items,
            1 => $"{items}, lumen {lumens}",
            _ => $"{items}, lumens {lumens}",
        };
    }

    private static string InWords(DueWindow window, Urgency urgency, DateTimeZone zone, Instant now)
    {
        if (urgency == Urgency.DateUnknown) return "date unknown: due at the first contact";
        if (window.IsLateAt(now)) return LateInWords(window, zone, now);
        if (window.Basis == ClockBasis.Hour || window.Standing == WindowStanding.CutShort)
            return $"by {Moment(window.LateFrom, zone)}";
        return window.OpensOn == window.LastDay ? Day(window.LastDay) : $"{Day(window.OpensOn)} to {Day(window.LastDay)}";
    }

    private static string LateInWords(DueWindow window, DateTimeZone zone, Instant now)
    {
        if (window.Basis == ClockBasis.Hour)
        {
            int hours = (int)Math.Floor((now - window.LateFrom).TotalHours);
            return hours < 1 ? "late by less than an hour" : $"late by {hours} {(hours == 1 ? "hour" : "hours")}";
        }

        int days = Period.DaysBetween(window.LastDay, now.InZone(zone).Date);
        return $"late by {days} {(days == 1 ? "day" : "days")}";
    }

    private static string? PlannedFor(ImmutableArray<WeekVisit> visits, string? key, IReadOnlyDictionary<string, string> nurses)
    {
        WeekVisit? visit = key is null ? null : visits.Where(v => v.Care.Any(c => c.Key == key)).OrderBy(v => v.Day).FirstOrDefault();
        return visit is null ? null : $"{Day(visit.Day)} {visit.Start:HH:mm}, {nurses.GetValueOrDefault(visit.Nurse, visit.Nurse)}";
    }

    private static string Day(LocalDate date) => Days.Format(date);

    private static string Moment(Instant at, DateTimeZone zone) => Moments.Format(at.InZone(zone).LocalDateTime);
}
