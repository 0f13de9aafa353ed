using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>A careful clerk with a calendar, the rule book and the patient's file, who counts every date by walking.</summary>
internal sealed partial class Desk
{
    private readonly PatientCare _file;
    private readonly ReadingRules _rules;
    private readonly WallCalendar _wall;
    private readonly Instant _now;
    private readonly LocalDate _today;
    private readonly List<Finding> _found = [];
    private readonly List<string> _locks = [];
    private readonly HashSet<string> _questions = [];

    private Desk(PatientCare file, PolicyBook book, Instant now)
    {
        (_file, _rules, _wall, _now) = (file, new ReadingRules(book), new WallCalendar(file.Zone), now);
        _today = _wall.DayAt(now);
    }

    private static PerformerKind Nurse => PerformerKind.Nurse;

    public static Findings Answer(PatientCare file, PolicyBook book, Instant now)
    {
        var desk = new Desk(file, book, now);
        var entries = desk.InOrder();
        var charts = file.Lines.Select(line => new WallChart(line, desk._wall)).ToList();
        desk.FillIn(charts, entries);
        foreach (var chart in charts) desk.ReadLine(chart);
        desk.ReadPatient(charts, entries);
        desk.GiveToTheClinic();
        var waived = desk.LeaveOutBeforeRemoval();
        return new Findings(
            Findings.Sorted(desk._found.Select(f => f.ToString())), Findings.Sorted(waived.Select(f => f.ToString())),
            Findings.Sorted(desk._locks), Findings.Sorted(desk._questions), desk.IsOnHold(entries));
    }

    /// <summary>Day by day from the first entry to today, each day's entries in their order.</summary>
    private void FillIn(List<WallChart> charts, List<LineEvent> entries)
    {
        if (entries.Count == 0) return;
        var next = 0;
        for (var day = _wall.DayAt(Stands(entries[0])); day <= _today; day = day.PlusDays(1))
            for (; next < entries.Count && _wall.DayAt(Stands(entries[next])) == day; next++)
                foreach (var chart in charts) chart.Write(entries[next], IsTheirsToDo(entries[next]));
    }

    /// <summary>What was struck out is left out, even when the strike-out was itself struck out; so is what has not happened yet.</summary>
    private List<LineEvent> InOrder()
    {
        var kept = new List<LineEvent>();
        foreach (var entry in _file.Events)
        {
            if (_file.Events.Any(other => other.Voids == entry.Id)) continue;
            var happened = entry.Performed is { At: null } day ? day.Date <= _today : Stands(entry) <= _now;
            if (happened) kept.Add(entry);
        }

        kept.Sort((a, b) =>
            Stands(a) != Stands(b) ? Stands(a).CompareTo(Stands(b))
            : HasTime(a) != HasTime(b) ? HasTime(a).CompareTo(HasTime(b))
            : a.Kind != b.Kind ? a.Kind.CompareTo(b.Kind)
            : a.RecordedAt != b.RecordedAt ? a.RecordedAt.CompareTo(b.RecordedAt)
            : string.CompareOrdinal(a.Id.Value, b.Id.Value));
        return kept;
    }

    private static bool HasTime(LineEvent entry) => entry.Performed is not { At: null };

    /// <summary>Where an entry stands in the order: its moment, the morning of its day, or when it was written down.</summary>
    private Instant Stands(LineEvent entry) => entry.Performed switch
    {
        null => entry.RecordedAt,
        { At: { } at } => at,
        { } day => _wall.Morning(day.Date),
    };

    /// <summary>A caregiver who is not validated for what they did leaves something to look at.</summary>
    private bool IsTheirsToDo(LineEvent entry)
    {
        if (entry.Performer != PerformerKind.Caregiver) return true;
        var day = entry.Performed?.Date ?? _wall.DayAt(entry.RecordedAt);
        bool Validated(CareItem item) => _file.Caregivers.Any(v => v.Item == item && (v.Line is null || v.Line == entry.Line)
            && v.ValidThrough >= day && (entry.PerformerName.Length == 0 || v.Person == entry.PerformerName));
        return entry.Kind switch
        {
            LineEventKind.DressingChanged => Validated(CareItem.Dressing),
            LineEventKind.ConnectorChanged => Validated(CareItem.Connector),
            LineEventKind.SetChanged => Validated(CareItem.Set),
            LineEventKind.PortAccessed => Validated(CareItem.PortNeedle),
            LineEventKind.Flushed => Validated(CareItem.LumenFlush) || Validated(CareItem.PortFlush),
            _ => true,
        };
    }

    private PerformerKind OwnerOf(CareItem item, LineId? line, LocalDate through)
    {
        if (through < _today) through = _today;
        return _file.Caregivers.Any(v => v.Item == item && (v.Line is null || v.Line == line) && v.ValidThrough >= through)
            ? PerformerKind.Caregiver
            : Nurse;
    }

    private bool IsOnHold(List<LineEvent> entries)
    {
        var inHospital = false;
        foreach (var entry in entries)
        {
            if (entry.Kind == LineEventKind.AdmittedToHospital) inHospital = true;
            if (entry.Kind == LineEventKind.ReturnedHome) inHospital = false;
        }

        return inHospital || _file.Holds.Any(hold => hold.From <= _today && !(hold.Through < _today));
    }

    private void GiveToTheClinic()
    {
        foreach (var clinic in _file.Outside)
        {
            var theirs = _found.Where(f => f.Line == clinic.Line.Value && f.Standing != WindowStanding.CutShort
                && f.Item is not (CareItem.NurseCheck or CareItem.CaregiverValidation) && clinic.Items.Contains(f.Item)
                && !_file.Events.Any(e => e.Id.Value == f.Anchor && f.Standing != WindowStanding.DateUnknown
                    && (e.Performed?.Date ?? _wall.DayAt(e.RecordedAt)) >= clinic.On)).ToList();
            if (theirs.Count == 0) continue;
            if (_now >= clinic.ReportBy) _questions.Add($"{clinic.Line} {DecisionCodes.OutsideCareNotReported}");
            else foreach (var f in theirs) _found[_found.IndexOf(f)] = f with { Owner = PerformerKind.Outside };
        }
    }

    /// <summary>Routine care due on the day before the line comes out, or later, is left out.</summary>
    private List<Finding> LeaveOutBeforeRemoval()
    {
        var left = new List<Finding>();
        foreach (var order in _file.Orders.Where(o => o.Kind == OrderKind.Removal && o.IsActiveOn(_today)))
        {
            if (!order.Dates.Any(day => day >= _today)) continue;
            var removal = order.Dates.Where(day => day >= _today).Min();
            var from = WallCalendar.DaysOn(removal, -(int)_rules.Value("removal.waiver", _today));
            var skipped = _found.Where(f => f.Line is not null && (order.Line is null || order.Line.Value.Value == f.Line)
                && f.Standing != WindowStanding.CutShort && f.LastDay >= from
                && f.Item is not (CareItem.Set or CareItem.Labs or CareItem.Recertification or CareItem.CaregiverValidation
                    or CareItem.NurseCheck or CareItem.RemovalSiteCheck or CareItem.OrderedService)).ToList();
            foreach (var f in skipped) _found.Remove(f);
            left.AddRange(skipped);
        }

        return left;
    }
}
