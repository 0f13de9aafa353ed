using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Kits;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.RedFlags;
using HomeLine.LineCare.Windows;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Visits;

/// <summary>Fills the form of a visit: what is planned, what could be done, how it was last time. Pure.</summary>
internal sealed class VisitBriefWriter(Patient patient, WeekVisit? planned, NurseFile? nurse, AgencyAtHand agency)
{
    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private readonly PatientCare care = agency.Files[patient.Id];
    private readonly CareAnswer answer = agency.Files.WhatIsDue(patient.Id, agency.Now);

    public VisitBrief Write(ImmutableArray<VisitRecord> standing)
    {
        LocalDateTime now = agency.Now.InZone(patient.Zone).LocalDateTime;
        ImmutableArray<ItemEntry> items = Items();
        ImmutableArray<Line> lines = LinesIn();
        var policy = agency.Files.Policy;
        LocalDateTime starts = planned is null ? now : planned.Day.At(planned.Start).InZoneLeniently(agency.Roster.Profile.Zone).WithZone(patient.Zone).LocalDateTime;
        return new VisitBrief
        {
            Patient = patient,
            Planned = planned,
            SentNurse = agency.Roster.Nurses.FirstOrDefault(n => n.Id == planned?.Nurse)?.Name ?? planned?.Nurse ?? "",
            Now = now,
            Starts = starts,
            Items = [.. items.Select(i => new ItemBrief(i, Window(i)))],
            Extras = [.. Extras(lines, items).Select(i => new ItemBrief(i, Window(i)))],
            Lines = [.. lines.Select(OfLine)],
            Draws = [.. Draws(items)],
            People = [.. care.Caregivers.Select(c => c.Person).Concat(patient.Contact.Length > 0 ? [patient.Contact] : []).Distinct(StringComparer.Ordinal)],
            Signs = [.. SymptomScreen.Questions(ScreenContext.Of(care, policy, agency.Today)).Where(q => q.Class is ScreenClass.Emergency or ScreenClass.UrgentClinician)],
            Unusual = [.. answer.Locks.Select(l => $"{l.Line}: {l.Reason}").Concat(agency.Questions(patient.Id).Where(q => answer.Locks.All(l => l.Code != q.Code)).Select(q => q.Sentence))],
            BeyondScope = [.. VisitScope.WhyNot(nurse, items, patient, care, policy, agency.Roster.Profile.CompactStates, starts.Date).Select(r => $"{r.Item.Label}: {r.Reason.Sentence}").Distinct()],
            Kit = KitList.Of(items.Select(i => (i.Item, i.Line, i.Lumens.Length)), care, policy, starts.Date),
            OnCallPhone = agency.Roster.Profile.OnCallPhone,
            EmergencyNumber = agency.Roster.Profile.EmergencyNumber,
            HasFirstDose = items.Any(i => VisitScope.IsFirstDose(i, care)),
            Recorded = planned is null ? [] : [.. standing.Where(r => r.Visit == planned.Id)],
        };
    }

    private ImmutableArray<ItemEntry> Items() => planned is null
        ? []
        : [.. planned.Care.Select(c => ItemEntry.FromKey(c.Key, Capital(c.Label), isPlanned: true)).OfType<ItemEntry>().OrderBy(i => Rank(i.Item))];

    /// <summary>In the order of the hands: draw before dose, look, dressing, connector.</summary>
    private static int Rank(CareItem item) => item switch
    {
        CareItem.Labs => 0,
        CareItem.PortNeedle => 1,
        CareItem.Dressing => 2,
        CareItem.Connector => 3,
        _ => 4,
    };

    private ImmutableArray<Line> LinesIn()
    {
        var ended = OrderedLedger.Read(care.Events, care.Zone, agency.Now).Where(e => e.Kind is LineEventKind.Removed or LineEventKind.Exchanged).Select(e => e.Line).ToHashSet();
        return [.. care.Lines.Where(l => !ended.Contains(l.Id) && l.Kind != LineKind.DialysisCatheter)];
    }

    private IEnumerable<ItemEntry> Extras(ImmutableArray<Line> lines, ImmutableArray<ItemEntry> items)
    {
        foreach (Line line in lines)
        {
            string letters = string.Concat(line.Lumens.Where(l => !l.Occluded).Select(l => l.Label));
            CareItem[] possible = line.Kind == LineKind.Port ? [CareItem.PortNeedle, CareItem.PortFlush] : [CareItem.Dressing, CareItem.Connector];
            foreach (CareItem item in possible.Where(c => items.All(i => i.Item != c || i.Line != line.Id)))
            {
                string lumens = item == CareItem.Connector ? letters : "";
                string label = $"{CareLabels.Of(item)}{(lumens.Length > 0 ? $" {string.Join(", ", lumens.Select(l => l.ToString()))}" : "")}, {CareLabels.Of(line.Kind)}";
                yield return ItemEntry.FromKey($"{patient.Id}|{item}|{line.Id}|{lumens}|", Capital(label), isPlanned: false)!;
            }
        }

        foreach (CareOrder order in care.Orders.Where(o => o.Kind is OrderKind.Labs or OrderKind.DrugLevel && o.IsActiveOn(agency.Today) && items.All(i => i.Order != o.Id)))
            yield return ItemEntry.FromKey($"{patient.Id}|{CareItem.Labs}|||{order.Id}", Capital(order.Text.Length > 0 ? order.Text : "labs"), isPlanned: false)!;
    }

    private LineBrief OfLine(Line line)
    {
        LineEvent[] events = [.. OrderedLedger.Read(care.Events, care.Zone, agency.Now).Where(e => e.Line == line.Id)];
        LineEvent? dressing = events.LastOrDefault(e => e.Kind is LineEventKind.DressingChanged or LineEventKind.PortAccessed or LineEventKind.Inserted);
        LineEvent? length = events.LastOrDefault(e => e.OutsideLengthCm is not null);
        LineEvent? site = events.LastOrDefault(e => e.Kind == LineEventKind.SiteChecked && e.Note.Length > 0);
        LineEvent? needle = events.LastOrDefault(e => e.Kind is LineEventKind.PortAccessed or LineEventKind.PortDeaccessed);
        return new LineBrief
        {
            Line = line,
            Label = $"{Capital(CareLabels.Of(line))}{(line.Site.Length > 0 ? $", {line.Site}" : "")}",
            Covering = dressing?.Dressing,
            LastDressing = dressing is null ? "" : $"{(dressing.Dressing is { } kind ? CareLabels.Of(kind) : "dressing")}, {When(dressing)}",
            LastLengthCm = length?.OutsideLengthCm ?? line.OutsideLengthCm,
            LastLengthOn = length is null ? line.OutsideLengthCm is null ? "" : "at insertion" : When(length),
            LastGirthCm = events.LastOrDefault(e => e.ArmGirthCm is not null)?.ArmGirthCm,
            LastSite = site is null ? "" : $"{When(site)}{(site.PerformerName.Length > 0 ? $", {site.PerformerName}" : "")}: {site.Note}",
            Locks = [.. answer.Locks.Where(l => l.Line == line.Id).Select(l => l.Reason)],
            Accessed = needle?.Kind == LineEventKind.PortAccessed,
            ChlorhexidineAllowed = Materials.ChlorhexidineAllowed(care, agency.Files.Policy, agency.Today).Allowed,
        };
    }

    private IEnumerable<DrawBrief> Draws(ImmutableArray<ItemEntry> items) => care.Orders
        .Where(o => o.Kind is OrderKind.Labs or OrderKind.DrugLevel && o.IsActiveOn(agency.Today))
        .Select(o => new DrawBrief(
            o.Id, o.Text.Length > 0 ? o.Text : "labs", o.Kind == OrderKind.DrugLevel, string.Join(", ", o.DoseTimes.Select(Clock.Format)), items.Any(i => i.Order == o.Id)));

    private string Window(ItemEntry item)
    {
        Chore? chore = Chore.Of(care, answer).FirstOrDefault(c => c.Key == item.Key)
            ?? Chore.Of(care, answer).FirstOrDefault(c => c.Item == item.Item && c.Line?.Id == item.Line && c.Order?.Id == item.Order);
        DueWindow? window = chore?.Lead;
        return window is null ? "no window open" : MovedWords.Words(window, care.Zone, agency.Now);
    }

    private static string When(LineEvent entry) => entry.Performed is { } performed ? Day.Format(performed.Date) : "date unknown";

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpper(text[0], CultureInfo.InvariantCulture) + text[1..];
}
