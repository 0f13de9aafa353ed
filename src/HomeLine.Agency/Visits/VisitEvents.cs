using System.Collections.Immutable;
using System.Globalization;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>
/// A visit as entries of the ledger, each at the time it was done. What was not done becomes an entry that moves no clock. Pure: the same visit always
/// makes the same entries.
/// </summary>
internal sealed class VisitEvents
{
    private readonly VisitEntry entry;
    private readonly PatientCare care;
    private readonly VisitTimes times;
    private readonly LineEvent blank;
    private readonly ImmutableArray<LineEvent>.Builder events = ImmutableArray.CreateBuilder<LineEvent>();

    private VisitEvents(VisitEntry entry, PatientCare care, VisitTimes times, LineEvent blank) =>
        (this.entry, this.care, this.times, this.blank) = (entry, care, times, blank);

    /// <param name="entry">The visit.</param>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="times">Its times.</param>
    /// <param name="record">Identifier of the record; the entries are numbered beneath it.</param>
    /// <param name="nurse">Who did it, as shown.</param>
    /// <param name="recordedBy">Who writes it down.</param>
    /// <param name="recordedAt">When.</param>
    public static ImmutableArray<LineEvent> Of(
        VisitEntry entry, PatientCare care, VisitTimes times, string record, string nurse, string recordedBy, Instant recordedAt)
    {
        var blank = new LineEvent
        {
            Id = new EventId(record),
            Patient = entry.Patient,
            Kind = LineEventKind.NotDone,
            RecordedAt = recordedAt,
            Performer = PerformerKind.Nurse,
            PerformerName = nurse,
            RecordedBy = recordedBy,
        };
        return new VisitEvents(entry, care, times, blank).Build();
    }

    private ImmutableArray<LineEvent> Build()
    {
        foreach (ItemEntry item in entry.Items.Where(i => i.IsDone)) AddItem(item);
        foreach (LineEntry line in entry.Lines) AddLine(line);
        foreach (DrawEntry draw in entry.Draws) AddDraw(draw);
        AddNotDone();
        return [.. events.Select((one, index) => one with { Id = new EventId(string.Create(CultureInfo.InvariantCulture, $"{blank.Id}-{index + 1}")) })];
    }

    private void AddItem(ItemEntry item)
    {
        CareOrder? order = item.Order is { } id ? care.Orders.FirstOrDefault(o => o.Id == id) : null;
        LineId? line = item.Line ?? order?.Line;
        switch (item.Item)
        {
            case CareItem.Dressing or CareItem.Securement:
                AddDressing(LineEventKind.DressingChanged, item, line);
                break;
            case CareItem.PortNeedle:
                AddDressing(LineEventKind.PortAccessed, item, line);
                break;
            case CareItem.Connector:
                Add(LineEventKind.ConnectorChanged, item, e => e with { Line = line, ConnectorsChanged = Lumens(item, line) });
                break;
            case CareItem.Set:
                Add(LineEventKind.SetChanged, item, e => e with { Line = line, LumensUsed = Lumens(item, line) });
                break;
            case CareItem.Recertification:
                Add(LineEventKind.Recertified, item, e => e);
                break;
            case CareItem.OrderedService:
                AddService(item, order, line);
                break;
            case CareItem.SiteCheck or CareItem.NurseCheck or CareItem.RemovalSiteCheck when LineOf(line) is not { Looked: true }:
                Add(LineEventKind.SiteChecked, item, e => e with { Line = line });
                break;
        }
    }

    private void AddDressing(LineEventKind kind, ItemEntry item, LineId? line)
    {
        LineEntry? seen = LineOf(line);
        Add(kind, item, e => e with
        {
            Line = line,
            Dressing = item.Dressing,
            SecurementChanged = item.SecurementChanged,
            OutsideLengthCm = kind == LineEventKind.DressingChanged ? seen?.OutsideLengthCm() : null,
            ArmGirthCm = seen?.ArmGirthCm,
            Note = seen is { AsFound: not SealFinding.None } ? $"As found: {VisitWords.Of(seen.AsFound)}." : "",
        });
    }

    private void AddService(ItemEntry item, CareOrder? order, LineId? line)
    {
        LineEventKind kind = order?.Kind switch
        {
            OrderKind.Removal => LineEventKind.Removed,
            OrderKind.NurseDose or OrderKind.LongInfusion or OrderKind.Hydration => LineEventKind.DoseGiven,
            _ => LineEventKind.ServiceGiven,
        };
        Add(kind, item, e => e with
        {
            Line = line,
            Order = item.Order,
            LumensUsed = kind == LineEventKind.DoseGiven ? Lumens(item, line) : [],
            OutsideLengthCm = kind == LineEventKind.Removed ? LineOf(line)?.RemovedLengthCm : null,
            Note = kind == LineEventKind.Removed && LineOf(line) is { Looked: true } seen ? VisitWords.Site(seen) : "",
        });
    }

    private void AddLine(LineEntry line)
    {
        bool dressed = entry.Items.Any(i => i.IsDone && i.Line == line.Line && i.Item is CareItem.Dressing or CareItem.Securement);
        bool needled = entry.Items.Any(i => i.IsDone && i.Line == line.Line && i.Item == CareItem.PortNeedle);
        if (!dressed && !needled && line.AsFound != SealFinding.None) AddAt(LineEventKind.SealReported, line, e => e with { Seal = line.AsFound });
        if (line.Reinforced) AddAt(LineEventKind.DressingReinforced, line, e => e);
        if (!dressed && (line.OutsideLength is not null || (line.ArmGirthCm is not null && !needled)))
            AddAt(LineEventKind.Measured, line, e => e with { OutsideLengthCm = line.OutsideLengthCm(), ArmGirthCm = needled ? null : line.ArmGirthCm });
        if (line.NeedleOut) AddAt(LineEventKind.PortDeaccessed, line, e => e);
        AddFlush(line);
        ImmutableArray<string> stuck = [.. line.Lumens.Where(l => l.WontFlush).Select(l => l.Label)];
        if (!stuck.IsEmpty) AddAt(LineEventKind.LumenOccluded, line, e => e with { LumensUsed = stuck, Note = "Does not flush; not forced." });
        // The look while the line came out is part of taking it out; the check of the site is a later one.
        bool tookItOut = events.Any(e => e.Kind == LineEventKind.Removed && e.Line == line.Line);
        if (line.Looked && !tookItOut) AddAt(LineEventKind.SiteChecked, line, e => e with { Note = VisitWords.Site(line) });
    }

    private void AddFlush(LineEntry line)
    {
        ImmutableArray<ItemEntry> asked = [.. entry.Items.Where(i => i.IsDone && i.Line == line.Line && i.Item is CareItem.LumenFlush or CareItem.PortFlush)];
        ImmutableArray<string> flushed = [.. line.Lumens.Where(l => l.Flushed).Select(l => l.Label).Concat(asked.SelectMany(i => Lumens(i, line.Line))).Distinct().Order(StringComparer.Ordinal)];
        if (flushed.IsEmpty) return;
        string back = VisitWords.BloodReturns(line.Lumens);
        LineEvent flush = blank with { Kind = LineEventKind.Flushed, Line = line.Line, LumensUsed = flushed, Note = back };
        events.Add(Performed(flush, asked.FirstOrDefault(i => i.At is not null)?.At, asked.FirstOrDefault(i => i.DoneBy.Length > 0)?.DoneBy ?? ""));
    }

    private void AddDraw(DrawEntry draw)
    {
        if (!entry.Items.Any(i => i.IsDone && i.Item == CareItem.Labs && i.Order == draw.Order)) return;
        LineEvent labs = blank with { Kind = LineEventKind.LabsDrawn, Order = draw.Order, Note = VisitWords.Draw(draw) };
        events.Add(Performed(labs, draw.DrawnAt, ""));
        if (draw.Line is { } line && draw.Lumen is { } lumen && !events.Any(e => e.Kind == LineEventKind.BloodDrawn && e.Line == line && e.LumensUsed.Contains(lumen)))
            events.Add(Performed(blank with { Kind = LineEventKind.BloodDrawn, Line = line, LumensUsed = [lumen] }, draw.DrawnAt, ""));
    }

    /// <summary>One entry for each line and reason, so that one refusal at one door counts once.</summary>
    private void AddNotDone()
    {
        foreach (var group in entry.Items.Where(i => i.Standing == ItemStanding.NotDone && i.Why is not null).GroupBy(i => (i.Line, i.Why!.Value)))
        {
            string words = string.Join("; ", group.Select(i => i.WhyText.Trim()).Where(t => t.Length > 0).Distinct());
            events.Add(Performed(
                blank with
                {
                    Kind = VisitWords.KindOf(group.Key.Value),
                    Line = group.Key.Line,
                    Note = $"Not done: {string.Join(", ", group.Select(i => i.Label))}. {VisitWords.Of(group.Key.Value)}{(words.Length > 0 ? $": {words}" : ".")}",
                },
                null,
                ""));
        }
    }

    private void Add(LineEventKind kind, ItemEntry item, Func<LineEvent, LineEvent> with) => events.Add(Performed(with(blank with { Kind = kind }), item.At, item.DoneBy));

    private void AddAt(LineEventKind kind, LineEntry line, Func<LineEvent, LineEvent> with) => events.Add(Performed(with(blank with { Kind = kind, Line = line.Line }), null, ""));

    private LineEvent Performed(LineEvent one, LocalTime? at, string by) => one with
    {
        Performed = CareMoment.Exactly(times.At(at), times.Zone),
        Performer = by.Length > 0 ? PerformerKind.Caregiver : one.Performer,
        PerformerName = by.Length > 0 ? by : one.PerformerName,
    };

    private LineEntry? LineOf(LineId? line) => line is null ? null : entry.Lines.FirstOrDefault(l => l.Line == line);

    private ImmutableArray<string> Lumens(ItemEntry item, LineId? line) => !item.Lumens.IsDefaultOrEmpty
        ? item.Lumens
        : care.Lines.FirstOrDefault(l => l.Id == line) is { Lumens.Length: 1 } one ? [one.Lumens[0].Label] : [];
}
