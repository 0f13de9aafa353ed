using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>Later published visits whose care a recorded visit has done already: their windows no longer open by that day. Pure.</summary>
internal static class ReplacedVisits
{
    public static ImmutableArray<ReplacedVisit> Of(VisitRecord record, ImmutableArray<PlannedWeek> weeks, AgencyAtHand agency)
    {
        if (!record.Entry.Items.Any(i => i.IsDone)) return [];
        PatientCare care = agency.Files[record.Patient];
        ImmutableArray<Chore> chores = [.. Chore.Of(care, agency.Files.WhatIsDue(record.Patient, agency.Now))];
        DateTimeZone zone = agency.Roster.Profile.Zone;
        return
        [
            .. weeks.SelectMany(w => w.Visits.Select(v => (Week: w.FirstDay, Visit: v)))
                .Where(x => x.Visit.Patient == record.Patient && x.Visit.Id != record.Visit
                    && x.Visit.Day.At(x.Visit.Start).InZoneLeniently(zone).ToInstant() > Instant.Max(record.ArrivedAt, agency.Now))
                .OrderBy(x => x.Visit.Day).ThenBy(x => x.Visit.Start)
                .Select(x => Of(record, x.Week, x.Visit, chores, agency))
                .Where(r => !r.NotNeeded.IsEmpty),
        ];
    }

    private static ReplacedVisit Of(VisitRecord record, LocalDate week, WeekVisit visit, ImmutableArray<Chore> chores, AgencyAtHand agency)
    {
        var parts = visit.Care.ToLookup(c => IsDone(record, c) && !IsDueBy(c, visit.Day, chores), c => c.Label);
        string nurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == visit.Nurse)?.Name ?? visit.Nurse;
        return new ReplacedVisit(
            visit.Id, week, $"{visit.Day.ToString("ddd d MMM", CultureInfo.InvariantCulture)} {visit.Start.ToString("HH:mm", CultureInfo.InvariantCulture)}, {nurse}",
            [.. parts[true]], [.. parts[false]]);
    }

    private static bool IsDone(VisitRecord record, VisitCare care) =>
        ItemEntry.FromKey(care.Key, care.Label, true) is { } item && record.Entry.Items.Any(i => i.IsDone && i.Item == item.Item && i.Line == item.Line && i.Order == item.Order);

    /// <summary>Still due by that day, by the windows as they now stand. What no window answers is kept.</summary>
    private static bool IsDueBy(VisitCare care, LocalDate day, ImmutableArray<Chore> chores)
    {
        if (ItemEntry.FromKey(care.Key, care.Label, true) is not { } item) return true;
        ImmutableArray<Chore> same = [.. chores.Where(c => c.Item == item.Item && c.Line?.Id == item.Line && c.Order?.Id == item.Order)];
        return same.IsEmpty || same.Any(c => c.Lead.OpensOn <= day);
    }
}
